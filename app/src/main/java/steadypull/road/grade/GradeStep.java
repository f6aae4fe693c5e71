package steadypull.road.grade;

import static steadypull.road.grade.GradeProcess.BALANCE;
import static steadypull.road.grade.GradeProcess.BEND;
import static steadypull.road.grade.GradeProcess.BRAKES;
import static steadypull.road.grade.GradeProcess.GRADE;
import static steadypull.road.grade.GradeProcess.HEIGHT;
import static steadypull.road.grade.GradeProcess.RECEIVER;
import static steadypull.road.grade.GradeProcess.SCALE;
import static steadypull.road.grade.GradeProcess.SPEED;

import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import steadypull.road.RoadLoad;
import steadypull.road.StandardAtmosphere;

/** What the state of a {@link GradeProcess} becomes from one moment to the next. One thread. */
final class GradeStep {
  private final double[] before;
  private final double seconds;
  private final RoadObservation observation;

  /**
   * A step.
   *
   * @param before the state at its beginning
   * @param beginSeconds when it begins
   * @param observation at its end
   */
  GradeStep(double[] before, double beginSeconds, RoadObservation observation) {
    this.before = before;
    this.seconds = observation.seconds() - beginSeconds;
    this.observation = observation;
  }

  RoadObservation observation() {
    return observation;
  }

  double seconds() {
    return seconds;
  }

  /** How many numbers the state has. */
  int size() {
    return before.length;
  }

  /** What was driven in it, 0 or more. */
  double metres() {
    return Math.max(0, before[SPEED]) * seconds;
  }

  /** The state at its end. */
  double[] moved() {
    double[] after = before.clone();
    double gained = observation.pull().map(known -> acceleration(known)).orElse(0.0) * seconds;
    after[SPEED] = Math.max(0, before[SPEED] + gained);
    after[HEIGHT] += (before[SPEED] + gained / 2) * seconds * sine(before[GRADE]);
    after[GRADE] = way() * keptGrade() * before[GRADE] + before[BEND] * metres();
    after[BEND] *= keptBend();
    after[RECEIVER] *= Math.exp(-seconds / GradeNoise.RECEIVER_SECONDS);
    after[BALANCE] *= Math.exp(-seconds / GradeNoise.BALANCE_SECONDS);
    after[BRAKES] =
        GradeNoise.BRAKES_MEAN * (observation.isBraked() ? 1 - keptBrakes() : 0)
            + keptBrakes() * before[BRAKES];
    return after;
  }

  /** The derivatives of the state at its end by that at its beginning. */
  RealMatrix transition() {
    RealMatrix transition = MatrixUtils.createRealIdentityMatrix(size());
    transition.setEntry(HEIGHT, SPEED, seconds * sine(before[GRADE]));
    transition.setEntry(HEIGHT, GRADE, metres() * cosine() * cosine() * cosine());
    transition.setEntry(GRADE, GRADE, way() * keptGrade());
    transition.setEntry(GRADE, BEND, metres());
    transition.setEntry(BEND, BEND, keptBend());
    transition.setEntry(RECEIVER, RECEIVER, Math.exp(-seconds / GradeNoise.RECEIVER_SECONDS));
    transition.setEntry(BALANCE, BALANCE, Math.exp(-seconds / GradeNoise.BALANCE_SECONDS));
    transition.setEntry(BRAKES, BRAKES, keptBrakes());
    observation.pull().ifPresent(known -> pulled(transition, known));
    return transition;
  }

  private void pulled(RealMatrix transition, RoadObservation.Pull pull) {
    RoadLoad load = pull.traction().load();
    double share = load.massKilograms() / load.inertialKilograms() * seconds;
    double weight = StandardAtmosphere.GRAVITY * share;
    double speed = Math.max(1, before[SPEED]);
    double drag = 2 * load.dragNewtons(speed) / speed / load.massKilograms() * share;
    transition.setEntry(SPEED, SPEED, 1 - drag);
    transition.setEntry(SPEED, GRADE, -weight * cosine() * cosine() * cosine());
    transition.setEntry(SPEED, BALANCE, weight);
    transition.setEntry(SPEED, BRAKES, -share);
    transition.setEntry(SPEED, SCALE, pull.newtonsPerKilogram() * share);
  }

  private double acceleration(RoadObservation.Pull pull) {
    RoadLoad load = pull.traction().load();
    double held = load.forceNewtons(Math.max(0, before[SPEED]), before[GRADE]);
    double perKilogram =
        pull.newtonsPerKilogram() * (1 + before[SCALE])
            + StandardAtmosphere.GRAVITY * before[BALANCE]
            - before[BRAKES]
            - held / load.massKilograms();
    return perKilogram * load.massKilograms() / load.inertialKilograms();
  }

  /** Who turns on the spot falls where he rose; a crest stays a crest. */
  private int way() {
    return observation.isTurnedOnTheSpot() ? -1 : 1;
  }

  private double keptGrade() {
    return Math.exp(-metres() / GradeNoise.GRADE_METRES);
  }

  private double keptBend() {
    return Math.exp(-metres() / GradeNoise.BEND_METRES);
  }

  /** Whoever turns moves the foot, and whoever pulls has it off the brakes. */
  private double keptBrakes() {
    return observation.isBraked() && observation.turn().isEmpty()
        ? Math.exp(-seconds / GradeNoise.BRAKES_SECONDS)
        : 0;
  }

  private double cosine() {
    return Math.cos(Math.atan(before[GRADE]));
  }

  private static double sine(double grade) {
    return Math.sin(Math.atan(grade));
  }
}
