package steadypull.compare;

import java.util.Arrays;

/** A line with its band over the seconds from 0, the onset, one value a second. Immutable. */
public final class Course {
  private final double[] low;
  private final double[] middle;
  private final double[] high;

  /**
   * Takes copies.
   *
   * @param low 5 % lie below
   * @param middle half lie below
   * @param high 5 % lie above; all of one length
   */
  public Course(double[] low, double[] middle, double[] high) {
    if (low.length != middle.length || middle.length != high.length) {
      throw new IllegalArgumentException(
          "A course has bounds for each second, found %d, %d, %d"
              .formatted(low.length, middle.length, high.length));
    }
    this.low = low.clone();
    this.middle = middle.clone();
    this.high = high.clone();
  }

  /** How many seconds it has; 0 if nothing could be told. */
  public int seconds() {
    return middle.length;
  }

  /** Under which 5 % lie, a value for each second; a copy. */
  public double[] low() {
    return low.clone();
  }

  /** Under which half lie, a value for each second; a copy. */
  public double[] middle() {
    return middle.clone();
  }

  /** Under which 95 % lie, a value for each second; a copy. */
  public double[] high() {
    return high.clone();
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
