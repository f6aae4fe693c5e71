package steadypull.demo.season;

/**
 * The speeds of one stretch: limits of town and descent, and braking in time for what comes.
 * Immutable.
 */
final class SpeedPlan {
  private static final double STEP_METRES = 10;
  private static final double BRAKING = 0.6; // m/s2, gentle with a trailer (estimated)
  private static final double STOPS_BEFORE_METRES = 12; // the driver's speed lags behind his wish
  private static final double TOWN_SPEED = 50 / 3.6;
  private static final double DESCENT_SPEED = 68 / 3.6;
  private static final double DESCENT_PERCENT = -4;

  private final double[] speeds;

  SpeedPlan(Leg.Stretch stretch, double from) {
    double length = Math.abs(stretch.to() - from);
    int last = Math.max(1, (int) ((length - STOPS_BEFORE_METRES) / STEP_METRES));
    speeds = new double[last + 1];
    for (int i = last - 1; i >= 0; i--) {
      double inTime = Math.sqrt(speeds[i + 1] * speeds[i + 1] + 2 * BRAKING * STEP_METRES);
      double metres = from + Math.signum(stretch.to() - from) * i * STEP_METRES;
      speeds[i] = Math.min(inTime, allowed(stretch, metres));
    }
  }

  private static double allowed(Leg.Stretch stretch, double metres) {
    if (metres < SeasonRoad.TOWN_METRES) {
      return Math.min(stretch.cruise(), TOWN_SPEED);
    }
    double grade = stretch.road().road().at(metres).gradePercent();
    boolean descends = (stretch.leadsHome() ? -grade : grade) < DESCENT_PERCENT;
    return descends ? Math.min(stretch.cruise(), DESCENT_SPEED) : stretch.cruise();
  }

  /** The wished speed so far into the stretch, m/s; 0 where the vehicle is to stop. */
  double at(double metresDriven) {
    int step = (int) (Math.max(0, metresDriven) / STEP_METRES);
    return step < speeds.length ? speeds[step] : 0;
  }

  /** Whether the stretch has been driven up to where the vehicle stops. */
  boolean isDriven(double metresDriven) {
    return metresDriven >= (speeds.length - 1) * STEP_METRES;
  }
}
