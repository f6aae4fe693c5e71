package steadypull.thermal;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.hipparchus.filtering.kalman.ProcessEstimate;
import org.hipparchus.filtering.kalman.extended.ExtendedKalmanFilter;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposer;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.SemiDefinitePositiveCholeskyDecomposition;
import steadypull.vehicle.LearntHeat;

/**
 * What is known about one store: its temperature, the disturbance that acts on it, its parameters,
 * all with their covariance, kept by an extended Kalman filter (Simon, Optimal State Estimation,
 * 2006, section 13.2). Without readings it goes on as a hidden store. Pipeline thread only.
 */
final class ChannelEstimate {
  /** After so long without a reading the temperature is taken anew, the parameters are kept. */
  private static final double RESTART_SECONDS = 60;

  /** So long a store counts as just met; over before the first forecast is given. */
  private static final double FIRST_SECONDS = 55;

  private static final double FIRST_READING_KELVIN = 0.8;
  private static final double HIDDEN_START_KELVIN = 12;

  /** Keeps a covariance positive definite against rounding. */
  private static final double ROUNDING = 1e-9;

  private static final CholeskyDecomposer DECOMPOSER = new CholeskyDecomposer(1e-8, 1e-14);

  private final Store store;
  private final HeatBalance balance;
  private final StoreProcess process;
  private final LearntBeliefs beliefs;
  private final ProcessEstimate prior;
  private ProcessEstimate estimate;
  private ExtendedKalmanFilter<Observation> filter;
  private double lastReadingSeconds = Double.NEGATIVE_INFINITY;
  private double metSeconds = Double.POSITIVE_INFINITY;

  /** Begins hidden, where the store probably stands, with what its layout leads one to believe. */
  ChannelEstimate(Store store, HeatBalance balance, double seconds, double outsideCelsius) {
    this(store, balance, LearntHeat.NOTHING, seconds, outsideCelsius);
  }

  /** Begins hidden, where the store probably stands, with what the vehicle's trips have taught. */
  ChannelEstimate(
      Store store, HeatBalance balance, LearntHeat learnt, double seconds, double outsideCelsius) {
    this.store = store;
    this.balance = balance;
    this.process = new StoreProcess(balance);
    this.beliefs = new LearntBeliefs(store, balance, learnt);
    double[] state = new double[process.size()];
    double[] variances = new double[process.size()];
    state[StoreProcess.CELSIUS] = balance.probableStart(outsideCelsius);
    state[StoreProcess.SHOWN] = state[StoreProcess.CELSIUS];
    variances[StoreProcess.CELSIUS] = HIDDEN_START_KELVIN * HIDDEN_START_KELVIN;
    variances[StoreProcess.SHOWN] = variances[StoreProcess.CELSIUS];
    variances[StoreProcess.DISTURBANCE] = balance.firstDisturbance() * balance.firstDisturbance();
    for (int i = StoreProcess.FIRST_COORDINATE; i < state.length; i++) {
      int parameter = i - StoreProcess.FIRST_COORDINATE;
      state[i] = beliefs.coordinate(parameter);
      variances[i] = beliefs.spread(parameter) * beliefs.spread(parameter);
    }
    this.prior =
        new ProcessEstimate(
            seconds, new ArrayRealVector(state), MatrixUtils.createRealDiagonalMatrix(variances));
    this.estimate = prior;
    this.filter = new ExtendedKalmanFilter<>(DECOMPOSER, process, estimate);
  }

  private ChannelEstimate(ChannelEstimate like, ProcessEstimate estimate) {
    this.store = like.store;
    this.balance = like.balance;
    this.process = like.process;
    this.beliefs = like.beliefs;
    this.prior = like.prior;
    this.estimate = estimate;
    this.filter = new ExtendedKalmanFilter<>(DECOMPOSER, process, estimate);
  }

  /** The same store before anything was learnt of it. */
  ChannelEstimate fresh() {
    return new ChannelEstimate(this, prior);
  }

  /** The same store in the middle of a trip, with all of the trip known. */
  ChannelEstimate smoothed(List<Observation> moments) {
    return new ChannelEstimate(
        this, StoreSmoother.middle(process.overAWholeTrip(), prior, moments));
  }

  Store store() {
    return store;
  }

  HeatBalance balance() {
    return balance;
  }

  /**
   * Moves to a later moment.
   *
   * @param reading a temperature that came since the last moment, if one did
   */
  void advance(double seconds, Load load, double[] around, OptionalDouble reading) {
    if (isAnew(seconds, reading)) {
      restart(seconds, reading.getAsDouble());
    } else {
      moment(seconds, load, around, reading)
          .ifPresent(moment -> estimate = filter.estimationStep(moment));
    }
    if (reading.isPresent()) {
      lastReadingSeconds = seconds;
    }
    keepWithinReason();
    doubt();
  }

  /** What earlier trips have taught counts no more where this one is clearly elsewhere. */
  private void doubt() {
    double[] widened = beliefs.doubted(state());
    if (widened.length > 0) {
      RealMatrix covariance = estimate.getCovariance().copy();
      for (int i = 0; i < widened.length; i++) {
        covariance.addToEntry(
            StoreProcess.FIRST_COORDINATE + i, StoreProcess.FIRST_COORDINATE + i, widened[i]);
      }
      estimate = new ProcessEstimate(estimate.getTime(), estimate.getState(), covariance);
      filter = new ExtendedKalmanFilter<>(DECOMPOSER, process, estimate);
    }
  }

  /**
   * The moment as a filter takes it that never starts anew: after a gap the temperature may be
   * anywhere. Empty if no time has passed.
   */
  Optional<Observation> moment(double seconds, Load load, double[] around, OptionalDouble reading) {
    double span = seconds - estimate.getTime();
    if (span <= 0) {
      return Optional.empty();
    }
    double wander =
        isAnew(seconds, reading) ? HIDDEN_START_KELVIN / Math.sqrt(span) : wander(seconds, load);
    return Optional.of(
        new Observation(seconds, load, around, reading, balance.readingKelvin(), wander));
  }

  private boolean isAnew(double seconds, OptionalDouble reading) {
    return reading.isPresent() && seconds - lastReadingSeconds > RESTART_SECONDS;
  }

  /**
   * A parameter that a bad minute has driven out of all reason is taken back to its edge. Beyond it
   * the model would not feel it any more, and the filter could never bring it back.
   */
  private void keepWithinReason() {
    double[] state = state();
    boolean isMoved = false;
    for (int i = StoreProcess.FIRST_COORDINATE; i < state.length; i++) {
      double bounded = process.parameter(i - StoreProcess.FIRST_COORDINATE).bounded(state[i]);
      isMoved |= bounded != state[i];
      state[i] = bounded;
    }
    if (isMoved) {
      estimate =
          new ProcessEstimate(
              estimate.getTime(), new ArrayRealVector(state), estimate.getCovariance());
      filter = new ExtendedKalmanFilter<>(DECOMPOSER, process, estimate);
    }
  }

  /** The filtered temperature, as its sensor shows it, degC. */
  double celsius() {
    return estimate.getState().getEntry(StoreProcess.SHOWN);
  }

  /** Whether a reading came lately; a hidden store is only believed. */
  boolean isMeasured(double seconds) {
    return seconds - lastReadingSeconds <= RESTART_SECONDS;
  }

  /** The state: degC, K/s, degC shown, then one coordinate per parameter. */
  double[] state() {
    return estimate.getState().toArray();
  }

  /** Variances of the state, in its order. */
  double[] variances() {
    RealMatrix covariance = estimate.getCovariance();
    double[] variances = new double[covariance.getRowDimension()];
    for (int i = 0; i < variances.length; i++) {
      variances[i] = covariance.getEntry(i, i);
    }
    return variances;
  }

  /** Physical parameter values of a state, in the order of the balance's parameters. */
  double[] physical(double[] state) {
    return process.physical(state);
  }

  /**
   * What is believed of one parameter now.
   *
   * @param index in the order of the balance's parameters
   */
  Belief belief(int index) {
    int place = StoreProcess.FIRST_COORDINATE + index;
    return Belief.of(
        process.parameter(index),
        estimate.getState().getEntry(place),
        Math.sqrt(Math.max(0, estimate.getCovariance().getEntry(place, place))));
  }

  /** A matrix whose product with its transpose is the covariance of the state. */
  double[][] spread() {
    RealMatrix covariance = estimate.getCovariance();
    RealMatrix even = covariance.add(covariance.transpose()).scalarMultiply(0.5);
    for (int i = 0; i < even.getRowDimension(); i++) {
      even.multiplyEntry(i, i, 1 + ROUNDING);
    }
    return new SemiDefinitePositiveCholeskyDecomposition(even, 1e-14).getL().getData();
  }

  /** How far the model may be wrong about the rate in the time to come, K/s. */
  double disturbance(double seconds) {
    return isNew(seconds) ? balance.firstDisturbance() : balance.disturbance();
  }

  private double wander(double seconds, Load load) {
    return isNew(seconds) ? balance.firstWander() : balance.wander(load);
  }

  private boolean isNew(double seconds) {
    return seconds - metSeconds < FIRST_SECONDS;
  }

  private void restart(double seconds, double celsius) {
    metSeconds = seconds;
    double[] state = state();
    RealMatrix covariance = estimate.getCovariance().copy();
    state[StoreProcess.CELSIUS] = celsius;
    state[StoreProcess.DISTURBANCE] = 0;
    state[StoreProcess.SHOWN] = celsius;
    for (int i = 0; i < state.length; i++) {
      for (int held = 0; held < StoreProcess.FIRST_COORDINATE; held++) {
        covariance.setEntry(i, held, 0);
        covariance.setEntry(held, i, 0);
      }
    }
    covariance.setEntry(
        StoreProcess.CELSIUS, StoreProcess.CELSIUS, FIRST_READING_KELVIN * FIRST_READING_KELVIN);
    covariance.setEntry(
        StoreProcess.DISTURBANCE,
        StoreProcess.DISTURBANCE,
        balance.firstDisturbance() * balance.firstDisturbance());
    covariance.setEntry(
        StoreProcess.SHOWN, StoreProcess.SHOWN, FIRST_READING_KELVIN * FIRST_READING_KELVIN);
    estimate = new ProcessEstimate(seconds, new ArrayRealVector(state), covariance);
    filter = new ExtendedKalmanFilter<>(DECOMPOSER, process, estimate);
  }
}
