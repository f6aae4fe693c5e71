package steadypull.road.load;

import org.hipparchus.filtering.kalman.extended.NonLinearEvolution;
import org.hipparchus.filtering.kalman.extended.NonLinearProcess;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.jspecify.annotations.Nullable;
import steadypull.road.StandardAtmosphere;

/**
 * How the energy of a rig moves, told as a height: altitude, and speed as the height it is worth.
 *
 * <p>What the wheels give, less rolling and drag, lifts that height; how much for each joule is the
 * mass. The height is the one thing that is observed, so the receiver's wandering never stands
 * among the causes, where it would make every rig look heavier (the errors-in-variables trap of a
 * regression on measured grades). Linear in all that is sought.
 */
final class HeadProcess implements NonLinearProcess<HeadObservation> {
  /** Altitude and the height that the speed is worth, m. */
  static final int HEAD = 0;

  /** What the receiver's altitude is too high, m. */
  static final int RECEIVER = 1;

  /** Share that wind adds to the drag. */
  static final int WIND = 2;

  /** The mass assumed over the mass. */
  static final int LIGHTNESS = 3;

  /** Drag area for each kilogram, over the one assumed. */
  static final int DRAG = 4;

  /** Rolling, and all that errs like it, as a fraction of the weight. */
  static final int ROLLING = 5;

  static final int SIZE = 6;

  /** A receiver's height wanders by this, m, over that many seconds (estimated on open drives). */
  static final double RECEIVER_METRES = 3.8;

  private static final double RECEIVER_SECONDS = 60;

  /** 3 m/s of wind along the road at 20 m/s change the drag by 30 %; it lasts (estimated). */
  static final double WIND_SHARE = 0.3;

  private static final double WIND_SECONDS = 1800;

  /** Gusts: a tenth of the drag for 8 s at a time, as white noise for a second (estimated). */
  private static final double GUSTS = 0.4;

  /** What pull and road leave unexplained, as a grade for a second (estimated). */
  private static final double UNEXPLAINED = 0.0025;

  /** How far brakes and missing seconds let the height move, m for a second. */
  private static final double UNKNOWN_METRES = 20;

  /** An altitude farther out than this many standard deviations is a reflection. */
  private static final double FARTHEST_SURPRISE = 4;

  private final double assumedNewtons;

  /**
   * A process that counts in a mass.
   *
   * @param assumedKilograms near the truth, above 0
   */
  HeadProcess(double assumedKilograms) {
    assumedNewtons = assumedKilograms * StandardAtmosphere.GRAVITY;
  }

  @Override
  public NonLinearEvolution getEvolution(
      double previousTime, RealVector previousState, HeadObservation observation) {
    HeadStep step = observation.step();
    RealMatrix transition = transition(step);
    return new NonLinearEvolution(
        step.seconds(),
        transition.operate(previousState),
        transition,
        noise(step),
        step.headMetres().isPresent() ? row() : null);
  }

  @Override
  public @Nullable RealVector getInnovation(
      HeadObservation observation, NonLinearEvolution evolution, RealMatrix innovationCovariance) {
    RealVector state = evolution.getCurrentState();
    double surprise =
        observation.step().headMetres().orElse(0) - state.getEntry(HEAD) - state.getEntry(RECEIVER);
    double farthest = FARTHEST_SURPRISE * Math.sqrt(innovationCovariance.getEntry(0, 0));
    return Math.abs(surprise) <= farthest ? new ArrayRealVector(new double[] {surprise}) : null;
  }

  private RealMatrix transition(HeadStep step) {
    RealMatrix transition = MatrixUtils.createRealIdentityMatrix(SIZE);
    transition.setEntry(RECEIVER, RECEIVER, Math.exp(-step.span() / RECEIVER_SECONDS));
    transition.setEntry(WIND, WIND, Math.exp(-step.span() / WIND_SECONDS));
    if (step.isPulled()) {
      transition.setEntry(HEAD, LIGHTNESS, step.wheelJoules() / assumedNewtons);
      transition.setEntry(HEAD, DRAG, -step.dragJoules() / assumedNewtons);
      transition.setEntry(HEAD, WIND, -step.dragJoules() / assumedNewtons);
      transition.setEntry(HEAD, ROLLING, -step.metres());
    }
    return transition;
  }

  private RealMatrix noise(HeadStep step) {
    double[] variances = new double[SIZE];
    variances[HEAD] = headNoise(step);
    variances[RECEIVER] = wandered(RECEIVER_METRES, step.span() / RECEIVER_SECONDS);
    variances[WIND] = wandered(WIND_SHARE, step.span() / WIND_SECONDS);
    return MatrixUtils.createRealDiagonalMatrix(variances);
  }

  private double headNoise(HeadStep step) {
    if (!step.isPulled()) {
      return UNKNOWN_METRES * UNKNOWN_METRES * step.span();
    }
    double gusts = GUSTS * step.dragJoules() / assumedNewtons;
    double unexplained = UNEXPLAINED * step.metres();
    return (gusts * gusts + unexplained * unexplained) / step.span();
  }

  /** What a quantity of that spread forgets, it gains anew. */
  private static double wandered(double spread, double forgotten) {
    return spread * spread * -Math.expm1(-2 * forgotten);
  }

  private static RealMatrix row() {
    RealMatrix row = MatrixUtils.createRealMatrix(1, SIZE);
    row.setEntry(0, HEAD, 1);
    row.setEntry(0, RECEIVER, 1);
    return row;
  }
}
