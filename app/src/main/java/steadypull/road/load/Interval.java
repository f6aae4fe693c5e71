package steadypull.road.load;

/**
 * A quantity that is known within bounds: nine times in ten the truth lies between the outer two.
 * Immutable.
 *
 * @param p05 one time in twenty the truth lies under it
 * @param p50 as often over it as under it
 * @param p95 one time in twenty the truth lies over it
 */
public record Interval(double p05, double p50, double p95) {
  /** Standard deviations from the middle of a normal distribution to its 95 % quantile. */
  private static final double TO_95_PERCENT = 1.6449;

  public Interval {
    if (!(p05 <= p50 && p50 <= p95)) {
      throw new IllegalArgumentException(
          "An interval rises, found %s, %s, %s".formatted(p05, p50, p95));
    }
  }

  /**
   * Of a positive quantity whose logarithm is normally distributed.
   *
   * @param middle above 0
   * @param share standard deviation of the logarithm, 0 or more
   */
  static Interval ofShare(double middle, double share) {
    double factor = Math.exp(TO_95_PERCENT * share);
    return new Interval(middle / factor, middle, middle * factor);
  }

  /** Whether a value lies within. */
  public boolean holds(double value) {
    return value >= p05 && value <= p95;
  }
}
