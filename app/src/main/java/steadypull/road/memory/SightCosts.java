package steadypull.road.memory;

/**
 * How badly what was seen fits a remembered road, as the negative logarithm of its likelihood
 * against that of a road which nobody knows. Below 0 speaks for the remembered road. Pure
 * functions.
 */
final class SightCosts {
  /** An unknown road that runs the same way lies anywhere in a corridor, m (estimated). */
  private static final double CORRIDOR_METRES = 100;

  /** Lanes, and the chords that stand for bends, m (estimated). */
  private static final double LANE_METRES = 3;

  private static final double HEADING_SPREAD = Math.toRadians(14);
  private static final double HEADING_FARTHEST = Math.toRadians(65);

  /** That a road runs the same way says so much for it; parallel roads do too. */
  private static final double SAME_WAY = 1.2;

  /** Grades of unknown roads spread by that (estimated). */
  private static final double GRADE_SPREAD = 0.04;

  /** Whoever errs so much tells no grade: no road is so steep. */
  static final double UNTOLD_GRADE_ERROR = 0.3;

  private static final double GRADE_FITS_MOST = 1.5;

  /** On one line with another grade it is a pass that errs sooner than another road. */
  private static final double GRADE_WORST = 4;

  private static final double GRADE_SLACK = 0.003;
  private static final double WORST = 12;

  /** A receiver errs the same way for most of a minute, so its seconds are not all news. */
  private static final double NEWS_SECONDS = 15;

  private static final double LIVE_NEWS_SECONDS = 10;

  private SightCosts() {}

  /** How much of what a step tells is news, 0 to 1. */
  static double weight(double seconds) {
    return Math.clamp(seconds / NEWS_SECONDS, 0.03, 0.5);
  }

  /** The same for a fix, 0 to 1; while driving, a road is to be recognised soon. */
  static double liveWeight(double seconds) {
    return Math.clamp(seconds / LIVE_NEWS_SECONDS, 0, 0.5);
  }

  static boolean isSameWay(double turned) {
    return Math.abs(turned) <= HEADING_FARTHEST;
  }

  static double across(double metres, double errorMetres) {
    double error = Math.hypot(errorMetres, LANE_METRES);
    return Math.min(WORST, square(metres / error) / 2)
        + Math.log(error * Math.sqrt(2 * Math.PI) / CORRIDOR_METRES);
  }

  static double heading(double turned) {
    return Math.min(WORST, square(turned / HEADING_SPREAD) / 2) - SAME_WAY;
  }

  /** A difference of grades in its standard deviations; roads have more bumps than nodes. */
  static double deviations(double difference, double error, double otherError) {
    return difference / Math.hypot(GRADE_SLACK, Math.hypot(error, otherError));
  }

  /** A grade that is not told speaks neither for a road nor against it. */
  static double grade(double difference, double error) {
    if (error >= UNTOLD_GRADE_ERROR) {
      return 0;
    }
    double slack = Math.hypot(error, GRADE_SLACK);
    return Math.min(GRADE_WORST, square(difference / slack) / 2)
        + Math.max(-GRADE_FITS_MOST, Math.log(slack / GRADE_SPREAD));
  }

  /** Metres along a road against metres driven; not weighed, for it is news with each step. */
  static double along(double differenceMetres, double drivenMetres) {
    return square(differenceMetres / (6 + 0.15 * drivenMetres)) / 2;
  }

  private static double square(double value) {
    return value * value;
  }
}
