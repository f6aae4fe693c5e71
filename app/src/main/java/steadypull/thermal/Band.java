package steadypull.thermal;

import java.util.Arrays;

/**
 * Turns draws of one channel into quantiles over time. The band is nothing wide now and never
 * narrows: what is uncertain in a minute is not more certain later.
 */
final class Band {
  private Band() {}

  /**
   * The fan of draws that all begin at the present temperature.
   *
   * @param draws degC by draw, then by point of the grid
   */
  static Fan fan(double[] secondsAhead, double nowCelsius, double[][] draws) {
    double[][] celsius = new double[Fan.LEVELS.size()][secondsAhead.length];
    Arrays.stream(celsius).forEach(level -> level[0] = nowCelsius);
    double[] widest = new double[Fan.LEVELS.size()];
    SortedColumn sorted = new SortedColumn(draws);
    for (int point = 1; point < secondsAhead.length; point++) {
      double[] column = sorted.at(point);
      double median = quantile(column, 0.5);
      for (int level = 0; level < celsius.length; level++) {
        double away = quantile(column, Fan.LEVELS.get(level)) - median;
        widest[level] =
            level < Fan.MEDIAN ? Math.min(widest[level], away) : Math.max(widest[level], away);
        celsius[level][point] = median + (level == Fan.MEDIAN ? 0 : widest[level]);
      }
    }
    return new Fan(secondsAhead, celsius);
  }

  /** A quantile of sorted values, plotting position (i - 0.5) / n (Hazen, 1914). */
  static double quantile(double[] sorted, double level) {
    double place = Math.clamp(level * sorted.length - 0.5, 0.0, sorted.length - 1.0);
    int below = (int) place;
    int above = Math.min(below + 1, sorted.length - 1);
    return sorted[below] + (place - below) * (sorted[above] - sorted[below]);
  }
}
