package steadypull.thermal;

import java.util.Arrays;
import java.util.List;

/**
 * A temperature to come, with its band: quantiles over a common time grid. The first point is now,
 * where every quantile is the present value.
 */
public final class Fan {
  /** The quantiles of every fan, lowest first. */
  public static final List<Double> LEVELS = List.of(0.05, 0.10, 0.25, 0.50, 0.75, 0.90, 0.95);

  /** Index of the median in {@link #LEVELS}. */
  public static final int MEDIAN = 3;

  private final double[] secondsAhead;
  private final double[][] celsius;

  /**
   * Takes copies.
   *
   * @param secondsAhead rising, the first is 0
   * @param celsius degC by quantile (as {@link #LEVELS}, lowest first), then by time
   */
  public Fan(double[] secondsAhead, double[][] celsius) {
    if (secondsAhead.length == 0 || secondsAhead[0] != 0) {
      throw new IllegalArgumentException("A fan begins now, at 0 s");
    }
    if (celsius.length != LEVELS.size()) {
      throw new IllegalArgumentException(
          "A fan has %d quantiles, found %d".formatted(LEVELS.size(), celsius.length));
    }
    this.secondsAhead = secondsAhead.clone();
    this.celsius = new double[celsius.length][];
    for (int level = 0; level < celsius.length; level++) {
      if (celsius[level].length != secondsAhead.length) {
        throw new IllegalArgumentException("Every quantile has a value at every time");
      }
      this.celsius[level] = celsius[level].clone();
    }
  }

  /** Number of points in time. */
  public int size() {
    return secondsAhead.length;
  }

  /** Seconds ahead of now of a point. */
  public double secondsAhead(int point) {
    return secondsAhead[point];
  }

  /** Degrees Celsius of one quantile (index into {@link #LEVELS}) at one point. */
  public double celsius(int level, int point) {
    return celsius[level][point];
  }

  /**
   * Degrees Celsius of one quantile at any time ahead, by linear interpolation; held beyond the
   * ends.
   */
  public double at(int level, double seconds) {
    int after = Arrays.binarySearch(secondsAhead, seconds);
    if (after >= 0) {
      return celsius[level][after];
    }
    after = -after - 1;
    if (after == 0) {
      return celsius[level][0];
    }
    if (after == size()) {
      return celsius[level][size() - 1];
    }
    double from = secondsAhead[after - 1];
    double share = (seconds - from) / (secondsAhead[after] - from);
    return celsius[level][after - 1] + share * (celsius[level][after] - celsius[level][after - 1]);
  }
}
