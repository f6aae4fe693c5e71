package steadypull.road.grade;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.hipparchus.filtering.kalman.KalmanEstimate;
import org.hipparchus.filtering.kalman.KalmanObserver;
import org.hipparchus.filtering.kalman.ProcessEstimate;
import org.hipparchus.filtering.kalman.extended.ExtendedKalmanFilter;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.LUDecomposer;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.jspecify.annotations.Nullable;

/**
 * The grade here and now, second after second, from torque balance and altitude together (extended
 * Kalman filter: Simon, Optimal State Estimation, 2006, section 13.2). One thread.
 */
final class GradeFilter {
  /** A longer step is a gap: what happened in it is unknown. */
  static final double LONGEST_STEP_SECONDS = 3;

  /** Brakes, clutch and converter make the pull at walking pace unknown. */
  private static final double LOWEST_PULLING_METRES_PER_SECOND = 3;

  private static final double FIRST_SPEED_ERROR = 0.3;
  private static final double FIRST_HEIGHT_ERROR = 200;

  private static final LUDecomposer DECOMPOSER = new LUDecomposer(1e-40);

  static final KalmanObserver NOBODY =
      new KalmanObserver() {
        @Override
        public void init(KalmanEstimate estimate) {}

        @Override
        public void updatePerformed(KalmanEstimate estimate) {}
      };

  private final KalmanObserver observer;
  private GradeProcess process = new GradeProcess();
  private @Nullable ExtendedKalmanFilter<RoadObservation> filter;
  private @Nullable ProcessEstimate estimate;
  private Optional<Traction> lastTraction = Optional.empty();
  private double metres;
  private boolean isAlongRoute;

  /** Begins with nothing known. */
  GradeFilter() {
    this(NOBODY, false);
  }

  /**
   * Begins with nothing known; the observer is told of each step.
   *
   * @param isAlongRoute whether a route may tell heights; an observer that needs states of one size
   *     has to know beforehand
   */
  GradeFilter(KalmanObserver observer, boolean isAlongRoute) {
    this.observer = observer;
    this.isAlongRoute = isAlongRoute;
  }

  /** Goes on where another stands. */
  GradeFilter(GradeFilter other) {
    this(other, NOBODY);
  }

  /** Goes on where another stands, with an observer of its own. */
  GradeFilter(GradeFilter other, KalmanObserver observer) {
    this(observer, other.isAlongRoute);
    process = new GradeProcess(other.process);
    estimate = other.estimate;
    lastTraction = other.lastTraction;
    metres = other.metres;
    if (estimate != null) {
      filter = filter(estimate);
    }
  }

  /**
   * Takes the next second. After a gap all but the scale of the torque begins anew.
   *
   * @param second later than the one before
   */
  void accept(RoadSecond second) {
    double step = estimate == null ? 0 : second.seconds() - estimate.getTime();
    if (estimate == null || step > LONGEST_STEP_SECONDS) {
      begin(second);
    } else {
      metres += estimate.getState().getEntry(GradeProcess.SPEED) * step;
    }
    if (second.routeMetres().isPresent() && !isAlongRoute) {
      comeUponRoute();
    }
    for (RoadObservation observation : observations(second, step)) {
      estimate = filterNow().estimationStep(observation);
    }
    lastTraction = pulling(second);
  }

  /** The grade of the last second, or empty before the first one. */
  Optional<GradeEstimate> estimate() {
    return Optional.ofNullable(estimate).map(known -> told(known, metres));
  }

  static GradeEstimate told(ProcessEstimate estimate, double metres) {
    double variance = estimate.getCovariance().getEntry(GradeProcess.GRADE, GradeProcess.GRADE);
    return new GradeEstimate(
        estimate.getTime(),
        metres,
        estimate.getState().getEntry(GradeProcess.GRADE),
        Math.sqrt(Math.max(1e-12, variance)),
        estimate.getState().getEntry(GradeProcess.HEIGHT));
  }

  private ExtendedKalmanFilter<RoadObservation> filterNow() {
    return Objects.requireNonNull(filter);
  }

  private List<RoadObservation> observations(RoadSecond second, double step) {
    Optional<RoadObservation.Pull> pull = pull(second, step);
    List<RoadObservation> told = new ArrayList<>();
    told.add(
        new RoadObservation(
            second.seconds(),
            RoadObservation.Kind.SPEED,
            second.metresPerSecond(),
            pull,
            second.turn()));
    second
        .altitudeMetres()
        .ifPresent(up -> told.add(height(second, RoadObservation.Kind.ALTITUDE, up, pull)));
    second
        .routeMetres()
        .ifPresent(up -> told.add(height(second, RoadObservation.Kind.ROUTE, up, pull)));
    return told;
  }

  private static RoadObservation height(
      RoadSecond second,
      RoadObservation.Kind kind,
      double metresUp,
      Optional<RoadObservation.Pull> pull) {
    return new RoadObservation(second.seconds(), kind, metresUp, pull, Optional.empty());
  }

  private Optional<RoadObservation.Pull> pull(RoadSecond second, double step) {
    Optional<Traction> now = pulling(second);
    if (now.isEmpty() || lastTraction.isEmpty() || step > LONGEST_STEP_SECONDS) {
      return Optional.empty();
    }
    double before = lastTraction.get().newtonsPerKilogram();
    double after = now.get().newtonsPerKilogram();
    return Optional.of(
        new RoadObservation.Pull(now.get(), (before + after) / 2, Math.abs(after - before) / 2));
  }

  private static Optional<Traction> pulling(RoadSecond second) {
    return second
        .traction()
        .filter(_ -> second.metresPerSecond() >= LOWEST_PULLING_METRES_PER_SECOND);
  }

  private void begin(RoadSecond second) {
    int size = isAlongRoute ? GradeProcess.SIZE_ALONG_ROUTE : GradeProcess.SIZE;
    double[] state = new double[size];
    double[] errors = new double[size];
    state[GradeProcess.SPEED] = second.metresPerSecond();
    errors[GradeProcess.SPEED] = FIRST_SPEED_ERROR;
    state[GradeProcess.HEIGHT] = second.altitudeMetres().orElse(0);
    errors[GradeProcess.HEIGHT] = FIRST_HEIGHT_ERROR;
    errors[GradeProcess.GRADE] = GradeNoise.GRADE_SPREAD;
    errors[GradeProcess.BEND] = GradeNoise.BEND_SPREAD;
    errors[GradeProcess.RECEIVER] = GradeNoise.RECEIVER_METRES;
    errors[GradeProcess.BALANCE] = GradeNoise.BALANCE_SHARE;
    errors[GradeProcess.BRAKES] = GradeNoise.BRAKES_SPREAD;
    errors[GradeProcess.SCALE] = GradeNoise.SCALE_SHARE;
    if (estimate != null) {
      int scale = GradeProcess.SCALE;
      state[scale] = estimate.getState().getEntry(scale);
      errors[scale] = Math.sqrt(estimate.getCovariance().getEntry(scale, scale));
    }
    if (isAlongRoute) {
      errors[GradeProcess.DATUM] = GradeNoise.DATUM_METRES;
    }
    RealMatrix covariance = MatrixUtils.createRealIdentityMatrix(size);
    for (int i = 0; i < size; i++) {
      covariance.setEntry(i, i, errors[i] * errors[i]);
    }
    estimate = new ProcessEstimate(second.seconds(), new ArrayRealVector(state), covariance);
    process = new GradeProcess();
    filter = filter(estimate);
  }

  /** From the first height that a route tells, its datum is part of the state. */
  private void comeUponRoute() {
    ProcessEstimate known = Objects.requireNonNull(estimate);
    isAlongRoute = true;
    if (known.getState().getDimension() < GradeProcess.SIZE_ALONG_ROUTE) {
      RealMatrix covariance =
          MatrixUtils.createRealMatrix(
              GradeProcess.SIZE_ALONG_ROUTE, GradeProcess.SIZE_ALONG_ROUTE);
      covariance.setSubMatrix(known.getCovariance().getData(), 0, 0);
      covariance.setEntry(
          GradeProcess.DATUM,
          GradeProcess.DATUM,
          GradeNoise.DATUM_METRES * GradeNoise.DATUM_METRES);
      estimate = new ProcessEstimate(known.getTime(), known.getState().append(0), covariance);
      filter = filter(estimate);
    }
  }

  private ExtendedKalmanFilter<RoadObservation> filter(ProcessEstimate from) {
    ExtendedKalmanFilter<RoadObservation> made =
        new ExtendedKalmanFilter<>(DECOMPOSER, process, from);
    made.setObserver(observer);
    return made;
  }
}
