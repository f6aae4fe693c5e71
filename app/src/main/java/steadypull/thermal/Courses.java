package steadypull.thermal;

import org.jspecify.annotations.Nullable;

/**
 * The courses that one channel may take: temperatures by draw and moment; where they settle. Used
 * by one thread.
 */
final class Courses {
  private final double nowCelsius;
  private final double[][] draws;
  private final double settledCelsius;
  private double @Nullable [][] ranks;

  /**
   * Keeps what is given.
   *
   * @param nowCelsius where all begin, degC
   * @param draws degC by draw, then by point of the horizon grid
   * @param settledCelsius where the middle one settles, degC
   */
  Courses(double nowCelsius, double[][] draws, double settledCelsius) {
    this.nowCelsius = nowCelsius;
    this.draws = draws;
    this.settledCelsius = settledCelsius;
  }

  double nowCelsius() {
    return nowCelsius;
  }

  /** degC by draw, then by point of the horizon grid. */
  double[][] draws() {
    return draws;
  }

  double settledCelsius() {
    return settledCelsius;
  }

  /** degC by rank, the coolest of each moment first, then by point of the horizon grid. */
  double[][] ranks() {
    double[][] known = ranks;
    if (known == null) {
      known = RankedDraws.of(draws);
      ranks = known;
    }
    return known;
  }

  /**
   * Moves all courses away from their middles, in place; those that cross go on crossing where they
   * did, so that they are put in order once.
   *
   * @param down by point, how many times as far a course below goes, above 0
   * @param up the same for one above
   */
  void stretch(double[] down, double[] up) {
    double[][] ordered = ranks();
    double[] middles = Band.quantiles(ordered, 0.5);
    stretch(draws, middles, down, up);
    stretch(ordered, middles, down, up);
  }

  private static void stretch(double[][] rows, double[] middles, double[] down, double[] up) {
    for (double[] row : rows) {
      for (int point = 1; point < row.length; point++) {
        double apart = row[point] - middles[point];
        row[point] = middles[point] + apart * (apart < 0 ? down[point] : up[point]);
      }
    }
  }
}
