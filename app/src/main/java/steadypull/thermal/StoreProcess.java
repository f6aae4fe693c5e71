package steadypull.thermal;

import org.hipparchus.filtering.kalman.extended.NonLinearEvolution;
import org.hipparchus.filtering.kalman.extended.NonLinearProcess;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;

/**
 * How the joint state of a store moves: temperature in degC, disturbance in K/s, temperature that
 * its sensor shows in degC, then one coordinate per parameter. Stateless.
 */
final class StoreProcess implements NonLinearProcess<Observation> {
  static final int CELSIUS = 0;
  static final int DISTURBANCE = 1;
  static final int SHOWN = 2;
  static final int FIRST_COORDINATE = 3;

  /** An unexplained heat flow (wind, traffic, a fan) goes on for about this long (estimated). */
  static final double DISTURBANCE_SECONDS = 90;

  /** In an hour a parameter may wander by this share of its prior spread (estimated). */
  private static final double PARAMETER_WANDER_PER_HOUR = 0.3;

  /**
   * Looked at from its end a trip has one set of parameters; what is left is what one set cannot
   * express, such as a pump that turns with the engine (estimated).
   */
  private static final double WHOLE_TRIP_WANDER_PER_HOUR = 0.1;

  /**
   * No store is one lump, nor is its sensor without lag: while its temperature moves, it moves by
   * this share faster or slower than one lump would, for so many seconds at a time (estimated). A
   * filter that did not know would believe its parameters far too soon.
   */
  private static final double UNEVEN_SHARE = 0.2;

  private static final double UNEVEN_SECONDS = 6;

  private static final double LONGEST_STEP_SECONDS = 5;

  /** A reading farther out than this many standard deviations is taken for no farther. */
  private static final double FARTHEST_SURPRISE = 4;

  private static final double PROBE = 1e-3;

  private final HeatBalance balance;
  private final double parameterWander;
  private final Parameter[] parameters;

  StoreProcess(HeatBalance balance) {
    this(balance, PARAMETER_WANDER_PER_HOUR);
  }

  private StoreProcess(HeatBalance balance, double parameterWander) {
    this.balance = balance;
    this.parameterWander = parameterWander;
    this.parameters = balance.parameters().toArray(Parameter[]::new);
  }

  /** The same store over a trip that is looked at from its end. */
  StoreProcess overAWholeTrip() {
    return new StoreProcess(balance, WHOLE_TRIP_WANDER_PER_HOUR);
  }

  int size() {
    return FIRST_COORDINATE + parameters.length;
  }

  Parameter parameter(int index) {
    return parameters[index];
  }

  /** Physical parameter values of a state. */
  double[] physical(double[] state) {
    double[] values = new double[parameters.length];
    for (int i = 0; i < values.length; i++) {
      values[i] = parameters[i].physical(state[FIRST_COORDINATE + i]);
    }
    return values;
  }

  @Override
  public NonLinearEvolution getEvolution(
      double previousTime, RealVector previousState, Observation observation) {
    double seconds = observation.getTime() - previousTime;
    double[] before = previousState.toArray();
    double[] after = moved(before, seconds, observation);
    return new NonLinearEvolution(
        observation.getTime(),
        new ArrayRealVector(after),
        transition(before, after, seconds, observation),
        noise(before, seconds, observation.wander(), after[CELSIUS] - before[CELSIUS]),
        observation.isMeasured() ? shownRow() : null);
  }

  @Override
  public RealVector getInnovation(
      Observation observation, NonLinearEvolution evolution, RealMatrix innovationCovariance) {
    double surprise =
        observation.getValue().getEntry(0) - evolution.getCurrentState().getEntry(SHOWN);
    double farthest = FARTHEST_SURPRISE * Math.sqrt(innovationCovariance.getEntry(0, 0));
    return new ArrayRealVector(new double[] {Math.clamp(surprise, -farthest, farthest)});
  }

  private double[] moved(double[] before, double seconds, Observation observation) {
    double[] state = before.clone();
    double[] physical = physical(state);
    int steps = (int) Math.ceil(seconds / LONGEST_STEP_SECONDS);
    for (int i = 0; i < steps; i++) {
      double step = seconds / steps;
      state[CELSIUS] =
          balance.step(
              state[CELSIUS],
              physical,
              observation.load(),
              observation.around(),
              state[DISTURBANCE],
              step);
      state[DISTURBANCE] *= Math.exp(-step / DISTURBANCE_SECONDS);
      state[SHOWN] = shown(state[SHOWN], state[CELSIUS], balance.sensorLagSeconds(physical), step);
    }
    return state;
  }

  /**
   * What a sensor shows after a step.
   *
   * @param before what it showed, degC
   * @param celsius of the store
   * @param lagSeconds its lag, 0 or more
   * @param seconds length of the step
   */
  static double shown(double before, double celsius, double lagSeconds, double seconds) {
    return lagSeconds == 0
        ? celsius
        : celsius + (before - celsius) * Math.exp(-seconds / lagSeconds);
  }

  private RealMatrix transition(
      double[] before, double[] after, double seconds, Observation observation) {
    RealMatrix transition = MatrixUtils.createRealIdentityMatrix(before.length);
    for (int column = 0; column < before.length; column++) {
      double[] probed = before.clone();
      double probe = column < FIRST_COORDINATE ? 1e-2 : PROBE;
      probed[column] += probe;
      double[] moved = moved(probed, seconds, observation);
      transition.setEntry(CELSIUS, column, (moved[CELSIUS] - after[CELSIUS]) / probe);
      transition.setEntry(SHOWN, column, (moved[SHOWN] - after[SHOWN]) / probe);
    }
    transition.setEntry(DISTURBANCE, DISTURBANCE, Math.exp(-seconds / DISTURBANCE_SECONDS));
    return transition;
  }

  private RealMatrix noise(double[] before, double seconds, double wander, double moved) {
    double[] variances = new double[size()];
    double beside = UNEVEN_SHARE * moved;
    variances[CELSIUS] =
        wander * wander * seconds + 2 * beside * beside * UNEVEN_SECONDS / Math.max(1, seconds);
    double disturbance = balance.disturbance();
    variances[DISTURBANCE] =
        disturbance * disturbance * -Math.expm1(-2 * seconds / DISTURBANCE_SECONDS);
    for (int i = 0; i < parameters.length; i++) {
      double drift = parameterWander * parameters[i].spread();
      variances[FIRST_COORDINATE + i] = drift * drift * seconds / 3600;
    }
    RealMatrix noise = MatrixUtils.createRealDiagonalMatrix(variances);
    double seen = shareSeen(balance.sensorLagSeconds(physical(before)), seconds);
    noise.setEntry(SHOWN, SHOWN, seen * seen * variances[CELSIUS]);
    noise.setEntry(SHOWN, CELSIUS, seen * variances[CELSIUS]);
    noise.setEntry(CELSIUS, SHOWN, seen * variances[CELSIUS]);
    return noise;
  }

  /** Share of what wanders in during a step that its sensor shows at its end, 0 to 1. */
  private static double shareSeen(double lagSeconds, double seconds) {
    return lagSeconds == 0 ? 1 : 1 + lagSeconds / seconds * Math.expm1(-seconds / lagSeconds);
  }

  private RealMatrix shownRow() {
    RealMatrix row = MatrixUtils.createRealMatrix(1, size());
    row.setEntry(0, SHOWN, 1);
    return row;
  }
}
