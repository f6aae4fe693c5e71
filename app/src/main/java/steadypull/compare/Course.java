package steadypull.compare;

import java.util.Arrays;

/**
 * A line with its band over the seconds from 0, the onset, one value a second. Immutable.
 *
 * @param low 5 % lie below
 * @param middle half lie below
 * @param high 5 % lie above; all of one length
 */
public record Course(double[] low, double[] middle, double[] high) {
  public Course {
    if (low.length != middle.length || middle.length != high.length) {
      throw new IllegalArgumentException(
          "A course has bounds for each second, found %d, %d, %d"
              .formatted(low.length, middle.length, high.length));
    }
    low = low.clone();
    middle = middle.clone();
    high = high.clone();
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Course course
        && Arrays.equals(low, course.low)
        && Arrays.equals(middle, course.middle)
        && Arrays.equals(high, course.high);
  }

  @Override
  public int hashCode() {
    return Arrays.hashCode(middle);
  }
}
