package steadypull.road.grade;

import java.util.Optional;
import org.hipparchus.filtering.kalman.extended.NonLinearEvolution;
import org.hipparchus.filtering.kalman.extended.NonLinearProcess;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.jspecify.annotations.Nullable;
import steadypull.road.RoadLoad;
import steadypull.road.StandardAtmosphere;

/**
 * How speed, height and grade move from one moment to the next, and the errors of those who tell
 * them. Belongs to one filter, for it counts the altitudes that it did not believe.
 *
 * <p>The grade is seen twice: in the speed that the pull at the wheels leaves over, and in the
 * height that the receiver tells. The first errs slowly by mass, drag and wind, the second by the
 * receiver's wandering; both errors are part of the state, so that each source corrects the other
 * (the manner of Sahlholm and Johansson, "Road grade estimation for look-ahead vehicle control
 * using multiple measurement runs", Control Engineering Practice 18, 2010, 1328-1341).
 */
final class GradeProcess implements NonLinearProcess<RoadObservation> {
  /** Road speed, m/s. */
  static final int SPEED = 0;

  /** Height of the road, m. */
  static final int HEIGHT = 1;

  /** Rise over run, a fraction. */
  static final int GRADE = 2;

  /** What the receiver's altitude is too high, m. */
  static final int RECEIVER = 3;

  /** What drag, wind and rolling are less than believed, as a fraction of the weight. */
  static final int BALANCE = 4;

  /** Share by which the pull for each kilogram is more than believed. */
  static final int SCALE = 5;

  /** How hard the brakes are on, m/s2; 0 while the engine pulls. */
  static final int BRAKES = 6;

  static final int SIZE = 7;

  /** A receiver's height wanders by this, m, over that many seconds (estimated on open drives). */
  static final double RECEIVER_METRES = 3.8;

  private static final double RECEIVER_SECONDS = 60;

  /** Wind and the rest: 0.4 % of the weight, over that many seconds (estimated). */
  static final double BALANCE_SHARE = 0.004;

  private static final double BALANCE_SECONDS = 600;

  /** Mass entered, torque told and driveline losses together (estimated). */
  static final double SCALE_SHARE = 0.04;

  /** In an hour the scale may wander by so much: tyres and oil get warm (estimated). */
  private static final double SCALE_WANDER_PER_HOUR = 0.002;

  /** Grades of roads spread about so much around level (estimated). */
  static final double GRADE_SPREAD = 0.04;

  /** Over so many metres a road forgets its grade (estimated). */
  private static final double GRADE_METRES = 8000;

  /** What pull and road load leave unexplained, m/s2 for a step of a second (estimated). */
  private static final double UNEXPLAINED = 0.04;

  /** Where nobody knows what pulls, m/s2 for a step of a second. */
  private static final double UNKNOWN = 1.2;

  /** Behind a descent's speed stand brakes of about this, m/s2, mean and spread (estimated). */
  private static final double BRAKES_MEAN = 0.05;

  private static final double BRAKES_SPREAD = 0.3;

  /** For so long a foot stays as it is on the brakes, s (estimated). */
  private static final double BRAKES_SECONDS = 8;

  /** Keeps the covariance positive definite while nobody brakes, (m/s2)2. */
  private static final double NO_BRAKES = 1e-5;

  /** A speed or altitude farther out than this many standard deviations is not believed. */
  private static final double FARTHEST_SURPRISE = 4;

  /** Reflections pass; after so many altitudes in a row it is the height that is lost. */
  private static final int MOST_DISBELIEVED = 20;

  private static final double LOST_HEIGHT_METRES = 60;

  private int disbelieved;

  /** The process of a filter that begins. */
  GradeProcess() {}

  /** The process of a filter that goes on where another stands. */
  GradeProcess(GradeProcess other) {
    disbelieved = other.disbelieved;
  }

  @Override
  public NonLinearEvolution getEvolution(
      double previousTime, RealVector previousState, RoadObservation observation) {
    double seconds = observation.seconds() - previousTime;
    double[] before = previousState.toArray();
    return new NonLinearEvolution(
        observation.seconds(),
        new ArrayRealVector(moved(before, seconds, observation.pull())),
        transition(before, seconds, observation.pull()),
        noise(before, seconds, observation),
        row(observation.kind()));
  }

  /** Speed is always believed; an altitude that jumps is a reflection. */
  @Override
  public @Nullable RealVector getInnovation(
      RoadObservation observation, NonLinearEvolution evolution, RealMatrix innovationCovariance) {
    double expected =
        evolution.getMeasurementJacobian().operate(evolution.getCurrentState()).getEntry(0);
    double surprise = observation.value() - expected;
    double farthest = FARTHEST_SURPRISE * Math.sqrt(innovationCovariance.getEntry(0, 0));
    if (observation.kind() == RoadObservation.Kind.ALTITUDE) {
      if (Math.abs(surprise) > farthest) {
        disbelieved++;
        return null;
      }
      disbelieved = 0;
    }
    return new ArrayRealVector(new double[] {surprise});
  }

  private static double[] moved(
      double[] before, double seconds, Optional<RoadObservation.Pull> pull) {
    double[] after = before.clone();
    double gained = pull.map(known -> acceleration(before, known)).orElse(0.0) * seconds;
    after[SPEED] = Math.max(0, before[SPEED] + gained);
    after[HEIGHT] += (before[SPEED] + gained / 2) * seconds * sine(before[GRADE]);
    double driven = Math.max(0, before[SPEED]) * seconds;
    after[GRADE] *= Math.exp(-driven / GRADE_METRES);
    after[RECEIVER] *= Math.exp(-seconds / RECEIVER_SECONDS);
    after[BALANCE] *= Math.exp(-seconds / BALANCE_SECONDS);
    after[BRAKES] =
        isBraking(pull)
            ? BRAKES_MEAN + (before[BRAKES] - BRAKES_MEAN) * Math.exp(-seconds / BRAKES_SECONDS)
            : 0;
    return after;
  }

  private static boolean isBraking(Optional<RoadObservation.Pull> pull) {
    return pull.filter(known -> !known.traction().isPulling()).isPresent();
  }

  private static double acceleration(double[] state, RoadObservation.Pull pull) {
    RoadLoad load = pull.traction().load();
    double perKilogram =
        pull.newtonsPerKilogram() * (1 + state[SCALE])
            + StandardAtmosphere.GRAVITY * state[BALANCE]
            - state[BRAKES]
            - load.forceNewtons(Math.max(0, state[SPEED]), state[GRADE]) / load.massKilograms();
    return perKilogram * load.massKilograms() / load.inertialKilograms();
  }

  private static RealMatrix transition(
      double[] before, double seconds, Optional<RoadObservation.Pull> pull) {
    RealMatrix transition = MatrixUtils.createRealIdentityMatrix(SIZE);
    double driven = Math.max(0, before[SPEED]) * seconds;
    double cosine = Math.cos(Math.atan(before[GRADE]));
    transition.setEntry(HEIGHT, SPEED, seconds * sine(before[GRADE]));
    transition.setEntry(HEIGHT, GRADE, driven * cosine * cosine * cosine);
    transition.setEntry(GRADE, GRADE, Math.exp(-driven / GRADE_METRES));
    transition.setEntry(RECEIVER, RECEIVER, Math.exp(-seconds / RECEIVER_SECONDS));
    transition.setEntry(BALANCE, BALANCE, Math.exp(-seconds / BALANCE_SECONDS));
    transition.setEntry(BRAKES, BRAKES, isBraking(pull) ? Math.exp(-seconds / BRAKES_SECONDS) : 0);
    pull.ifPresent(known -> pulled(transition, before, seconds, known, cosine));
    return transition;
  }

  private static void pulled(
      RealMatrix transition,
      double[] before,
      double seconds,
      RoadObservation.Pull pull,
      double cosine) {
    RoadLoad load = pull.traction().load();
    double share = load.massKilograms() / load.inertialKilograms() * seconds;
    double weight = StandardAtmosphere.GRAVITY * share;
    double drag = 2 * load.dragNewtons(Math.max(1, before[SPEED])) / Math.max(1, before[SPEED]);
    transition.setEntry(SPEED, SPEED, 1 - drag / load.massKilograms() * share);
    transition.setEntry(SPEED, GRADE, -weight * cosine * cosine * cosine);
    transition.setEntry(SPEED, BALANCE, weight);
    transition.setEntry(SPEED, BRAKES, -share);
    transition.setEntry(SPEED, SCALE, pull.newtonsPerKilogram() * share);
  }

  private RealMatrix noise(double[] before, double seconds, RoadObservation observation) {
    Optional<RoadObservation.Pull> pull = observation.pull();
    double driven = Math.max(0, before[SPEED]) * seconds;
    double unexplained = pull.map(known -> Math.hypot(UNEXPLAINED, known.error())).orElse(UNKNOWN);
    double[] variances = new double[SIZE];
    variances[SPEED] = unexplained * unexplained * seconds;
    variances[GRADE] =
        observation.hasTurned()
            ? 2 * GRADE_SPREAD * GRADE_SPREAD
            : wandered(GRADE_SPREAD, driven / GRADE_METRES);
    if (disbelieved >= MOST_DISBELIEVED) {
      variances[HEIGHT] = LOST_HEIGHT_METRES * LOST_HEIGHT_METRES;
    }
    variances[RECEIVER] = wandered(RECEIVER_METRES, seconds / RECEIVER_SECONDS);
    variances[BALANCE] = wandered(BALANCE_SHARE, seconds / BALANCE_SECONDS);
    variances[BRAKES] =
        isBraking(pull) ? wandered(BRAKES_SPREAD, seconds / BRAKES_SECONDS) : NO_BRAKES;
    variances[SCALE] = SCALE_WANDER_PER_HOUR * SCALE_WANDER_PER_HOUR * seconds / 3600;
    return MatrixUtils.createRealDiagonalMatrix(variances);
  }

  /** What a quantity of that spread forgets, it gains anew. */
  private static double wandered(double spread, double forgotten) {
    return spread * spread * -Math.expm1(-2 * forgotten);
  }

  private static RealMatrix row(RoadObservation.Kind kind) {
    RealMatrix row = MatrixUtils.createRealMatrix(1, SIZE);
    row.setEntry(0, kind.state(), 1);
    if (kind == RoadObservation.Kind.ALTITUDE) {
      row.setEntry(0, RECEIVER, 1);
    }
    return row;
  }

  private static double sine(double grade) {
    return Math.sin(Math.atan(grade));
  }
}
