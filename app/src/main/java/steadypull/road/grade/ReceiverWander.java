package steadypull.road.grade;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import steadypull.road.FlatGround;
import steadypull.road.PositionFix;

/**
 * How far a receiver wandered, from its own fixes: what it says was driven in 15 s, against the
 * wheels, less the same of the 15 s before. That leaves out a speed that is told wrong, the road's
 * bends (only straight stretches count) and reflections (the median counts). One drive, one thread.
 */
final class ReceiverWander {
  /** A receiver behind a windscreen, m (estimated on open drives). */
  static final double USUAL_METRES = 2.2;

  private static final int STEP_SECONDS = 15;
  private static final int AROUND_SECONDS = 450;

  /** Before anything was measured the usual receiver counts like so many measurements. */
  private static final double USUAL_COUNTS = 4;

  private static final double LEAST_METRES = 1;
  private static final double MOST_METRES = 15;

  /** Speeds come in whole km/h; what that does to the difference, m. */
  private static final double SPEED_METRES = 1;

  /**
   * The difference's variance over that of the error itself, which keeps exp(-t/50 s) of itself
   * after t: 6 - 8 exp(-0.3) + 2 exp(-0.6).
   */
  private static final double DIFFERENCE_SHARE = 1.171;

  /** The median of a normal variable's size over its standard deviation. */
  private static final double MEDIAN_SHARE = 0.6745;

  private static final double LEAST_METRES_PER_SECOND = 5;
  private static final double STRAIGHT = Math.toRadians(12);
  private static final double STEADY_SHARE = 0.25;

  private final List<RoadSecond> seconds;
  private final List<Optional<PositionFix>> fixes;
  private final double[] driven;

  private ReceiverWander(List<RoadSecond> seconds, List<Optional<PositionFix>> fixes) {
    this.seconds = seconds;
    this.fixes = fixes;
    driven = new double[seconds.size()];
    for (int i = 1; i < driven.length; i++) {
      driven[i] = driven[i - 1] + seconds.get(i).metresPerSecond();
    }
  }

  /** The standard deviation to each side at each second of an unbroken drive, m, above 0. */
  static double[] metres(List<RoadSecond> seconds, List<Optional<PositionFix>> fixes) {
    return new ReceiverWander(seconds, fixes).metres();
  }

  private double[] metres() {
    double[] sizes = new double[seconds.size()];
    Arrays.fill(sizes, Double.NaN);
    for (int i = STEP_SECONDS; i + STEP_SECONDS < sizes.length; i++) {
      sizes[i] = Math.abs(difference(i));
    }
    double[] wander = new double[sizes.length];
    for (int i = 0; i < wander.length; i += STEP_SECONDS) {
      double here = around(sizes, i);
      Arrays.fill(wander, i, Math.min(wander.length, i + STEP_SECONDS), here);
    }
    return wander;
  }

  /** How the receiver's distance differs from the wheels', after less before; NaN: not told. */
  private double difference(int at) {
    Optional<PositionFix> before = fixes.get(at - STEP_SECONDS);
    Optional<PositionFix> here = fixes.get(at);
    Optional<PositionFix> after = fixes.get(at + STEP_SECONDS);
    double first = driven[at] - driven[at - STEP_SECONDS];
    double second = driven[at + STEP_SECONDS] - driven[at];
    boolean isSteady =
        first > STEP_SECONDS * LEAST_METRES_PER_SECOND
            && Math.abs(second - first) < STEADY_SHARE * first;
    if (before.isEmpty() || here.isEmpty() || after.isEmpty() || !isSteady) {
      return Double.NaN;
    }
    FlatGround ground =
        FlatGround.around(here.get().latitudeDegrees(), here.get().longitudeDegrees());
    FlatGround.Spot from = spot(ground, before.get());
    FlatGround.Spot to = spot(ground, after.get());
    double turned =
        Math.IEEEremainder(
            Math.atan2(to.north(), to.east()) - Math.atan2(-from.north(), -from.east()),
            2 * Math.PI);
    return Math.abs(turned) > STRAIGHT
        ? Double.NaN
        : Math.hypot(to.east(), to.north())
            - second
            - Math.hypot(from.east(), from.north())
            + first;
  }

  private static FlatGround.Spot spot(FlatGround ground, PositionFix fix) {
    return ground.spot(fix.latitudeDegrees(), fix.longitudeDegrees());
  }

  private static double around(double[] sizes, int at) {
    double[] told =
        Arrays.stream(
                sizes,
                Math.max(0, at - AROUND_SECONDS),
                Math.min(sizes.length, at + AROUND_SECONDS))
            .filter(size -> !Double.isNaN(size))
            .sorted()
            .toArray();
    double count = (double) told.length / STEP_SECONDS;
    double median = told.length == 0 ? 0 : told[told.length / 2] / MEDIAN_SHARE;
    double variance = Math.max(0, median * median - SPEED_METRES * SPEED_METRES) / DIFFERENCE_SHARE;
    double usual = USUAL_METRES * USUAL_METRES;
    return Math.clamp(
        Math.sqrt((count * variance + USUAL_COUNTS * usual) / (count + USUAL_COUNTS)),
        LEAST_METRES,
        MOST_METRES);
  }
}
