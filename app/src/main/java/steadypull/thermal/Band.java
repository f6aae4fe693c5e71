package steadypull.thermal;

/**
 * Turns draws of one channel into quantiles over time. The band is nothing wide now and never
 * narrows: what is uncertain in a minute is not more certain later.
 */
final class Band {
  private Band() {}

  /** The fan of courses that all begin at the present temperature. */
  static Fan fan(double[] secondsAhead, Courses courses) {
    double[] medians = quantiles(courses.ranks(), 0.5);
    double[][] celsius = new double[Fan.LEVELS.size()][];
    for (int level = 0; level < celsius.length; level++) {
      celsius[level] = quantiles(courses.ranks(), Fan.LEVELS.get(level));
      widen(celsius[level], medians, level < Fan.MEDIAN ? -1 : 1);
      celsius[level][0] = courses.nowCelsius();
    }
    return new Fan(secondsAhead, celsius);
  }

  /** Never nearer to the median than a moment before, on its side: -1 below, 1 above. */
  private static void widen(double[] quantile, double[] medians, int side) {
    double widest = 0;
    for (int point = 1; point < quantile.length; point++) {
      widest = Math.max(widest, side * (quantile[point] - medians[point]));
      quantile[point] = medians[point] + side * widest;
    }
  }

  /**
   * A quantile of every moment.
   *
   * @param ranks degC by rank, the coolest first, then by point of the grid
   */
  static double[] quantiles(double[][] ranks, double level) {
    double place = place(ranks.length, level);
    int below = (int) place;
    double[] lower = ranks[below];
    double[] upper = ranks[Math.min(below + 1, ranks.length - 1)];
    double[] quantiles = new double[lower.length];
    for (int point = 0; point < quantiles.length; point++) {
      quantiles[point] = lower[point] + (place - below) * (upper[point] - lower[point]);
    }
    return quantiles;
  }

  /** A quantile of sorted values, plotting position (i - 0.5) / n (Hazen, 1914). */
  static double quantile(double[] sorted, double level) {
    double place = place(sorted.length, level);
    int below = (int) place;
    int above = Math.min(below + 1, sorted.length - 1);
    return sorted[below] + (place - below) * (sorted[above] - sorted[below]);
  }

  private static double place(int count, double level) {
    return Math.clamp(level * count - 0.5, 0.0, count - 1.0);
  }
}
