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

/** How far nobody knows what the state of a {@link GradeProcess} becomes. Stateless. */
final class GradeNoise {
  /** A receiver's height wanders by this, m, over that many seconds (estimated on open drives). */
  static final double RECEIVER_METRES = 3.8;

  static final double RECEIVER_SECONDS = 60;

  /** Wind, tyres and the rest: a share of the weight, over that many seconds (estimated). */
  static final double BALANCE_SHARE = 0.004;

  static final double BALANCE_SECONDS = 1200;

  /** Mass entered, torque told and driveline losses together (estimated). */
  static final double SCALE_SHARE = 0.05;

  /** In an hour the scale may wander by so much: tyres and oil get warm (estimated). */
  private static final double SCALE_WANDER_PER_HOUR = 0.002;

  /** Grades of roads spread about so much around level (estimated). */
  static final double GRADE_SPREAD = 0.04;

  /** Over so many metres a road forgets its grade (estimated). */
  static final double GRADE_METRES = 8000;

  /** A metre adds so much to the grade's error, beside the bend (estimated). */
  private static final double GRADE_PER_ROOT_METRE = 0.0002;

  /**
   * Crests and sags, 1/m, and over how many metres they last (estimated on the invented country,
   * whose slopes change over a kilometre; where a road is sharper {@link Restlessness} tells).
   */
  static final double BEND_SPREAD = 3e-5;

  static final double BEND_METRES = 400;

  /** What pull and road load leave unexplained, m/s2 for a step of a second (estimated). */
  private static final double UNEXPLAINED = 0.02;

  /** Where nobody knows what pulls, m/s2 for a step of a second. */
  private static final double UNKNOWN = 1.2;

  /** Behind a descent's speed stand brakes of about this, m/s2, mean and spread (estimated). */
  static final double BRAKES_MEAN = 0.15;

  static final double BRAKES_SPREAD = 0.35;

  /** For so long a descent asks the same of the brakes, s (estimated). */
  static final double BRAKES_SECONDS = 30;

  /** Keeps the covariance positive definite while nobody brakes, (m/s2)2. */
  private static final double NO_BRAKES = 1e-5;

  /** Where the vehicle drives back, and the receiver saw that it did, a fraction (estimated). */
  private static final double SPOT_SPREAD = 0.01;

  private static final double LOST_HEIGHT_METRES = 60;

  /** Files count heights from the sea, the ellipsoid or anything between, m (estimated). */
  static final double DATUM_METRES = 50;

  private GradeNoise() {}

  /**
   * The covariance of what a step adds.
   *
   * @param restless how many times as much as usual the grade changes here, 1 or more
   * @param isHeightLost whether the altitudes have contradicted the height for long
   */
  static RealMatrix of(GradeStep step, double restless, boolean isHeightLost) {
    double[] variances = new double[step.size()];
    variances[SPEED] = speed(step);
    variances[HEIGHT] = isHeightLost ? LOST_HEIGHT_METRES * LOST_HEIGHT_METRES : 0;
    variances[GRADE] = grade(step) * restless * restless;
    variances[BEND] = wandered(BEND_SPREAD * restless, step.metres() / BEND_METRES);
    variances[RECEIVER] = wandered(RECEIVER_METRES, step.seconds() / RECEIVER_SECONDS);
    variances[BALANCE] = wandered(BALANCE_SHARE, step.seconds() / BALANCE_SECONDS);
    variances[SCALE] = SCALE_WANDER_PER_HOUR * SCALE_WANDER_PER_HOUR * step.seconds() / 3600;
    variances[BRAKES] = brakes(step);
    RealMatrix noise = MatrixUtils.createRealDiagonalMatrix(variances);
    noise.addToEntry(GRADE, GRADE, variances[BEND] * step.metres() * step.metres() / 3);
    noise.addToEntry(GRADE, BEND, variances[BEND] * step.metres() / 2);
    noise.addToEntry(BEND, GRADE, variances[BEND] * step.metres() / 2);
    return noise;
  }

  private static double speed(GradeStep step) {
    double unexplained =
        step.observation()
            .pull()
            .map(known -> Math.hypot(UNEXPLAINED, known.error()))
            .orElse(UNKNOWN);
    return unexplained * unexplained * step.seconds();
  }

  private static double grade(GradeStep step) {
    double wandered = GRADE_PER_ROOT_METRE * GRADE_PER_ROOT_METRE * step.metres();
    if (step.observation().turn().isEmpty()) {
      return wandered;
    }
    return step.observation().isTurnedOnTheSpot()
        ? SPOT_SPREAD * SPOT_SPREAD
        : 2 * GRADE_SPREAD * GRADE_SPREAD;
  }

  private static double brakes(GradeStep step) {
    if (!step.observation().isBraked()) {
      return NO_BRAKES;
    }
    return step.observation().turn().isPresent()
        ? BRAKES_SPREAD * BRAKES_SPREAD
        : wandered(BRAKES_SPREAD, step.seconds() / BRAKES_SECONDS);
  }

  /** What a quantity of that spread forgets, it gains anew. */
  private static double wandered(double spread, double forgotten) {
    return spread * spread * -Math.expm1(-2 * forgotten);
  }
}
