package steadypull.road.grade;

import org.hipparchus.filtering.kalman.extended.NonLinearEvolution;
import org.hipparchus.filtering.kalman.extended.NonLinearProcess;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.jspecify.annotations.Nullable;

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

  /** What the grade gains for each metre, 1/m: crests and sags. */
  static final int BEND = 3;

  /** What the receiver's altitude is too high, m. */
  static final int RECEIVER = 4;

  /** What drag, wind and rolling are less than believed, as a fraction of the weight. */
  static final int BALANCE = 5;

  /** Share by which the pull for each kilogram is more than believed. */
  static final int SCALE = 6;

  /** How hard the brakes are on, m/s2; 0 while the engine pulls. */
  static final int BRAKES = 7;

  static final int SIZE = 8;

  /**
   * What a route's elevations are too high all along, m; only in the state of a filter that was
   * told one.
   */
  static final int DATUM = 8;

  static final int SIZE_ALONG_ROUTE = 9;

  /** An altitude farther out than this many standard deviations is not believed. */
  private static final double FARTHEST_SURPRISE = 4;

  /** Reflections pass; after so many altitudes in a row it is the height that is lost. */
  private static final int MOST_DISBELIEVED = 20;

  private final Restlessness restlessness = new Restlessness();
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
    GradeStep step = new GradeStep(previousState.toArray(), previousTime, observation);
    return new NonLinearEvolution(
        observation.seconds(),
        new ArrayRealVector(step.moved()),
        step.transition(),
        GradeNoise.of(step, restlessness.factor(), disbelieved >= MOST_DISBELIEVED),
        row(observation.kind(), previousState.getDimension()));
  }

  /** Speed is always believed; a height that jumps is a reflection, or another road's. */
  @Override
  public @Nullable RealVector getInnovation(
      RoadObservation observation, NonLinearEvolution evolution, RealMatrix innovationCovariance) {
    double expected =
        evolution.getMeasurementJacobian().operate(evolution.getCurrentState()).getEntry(0);
    double surprise = observation.value() - expected;
    double farthest = FARTHEST_SURPRISE * Math.sqrt(innovationCovariance.getEntry(0, 0));
    boolean isBelieved =
        switch (observation.kind()) {
          case SPEED -> {
            restlessness.accept(surprise / Math.sqrt(innovationCovariance.getEntry(0, 0)));
            yield true;
          }
          case ALTITUDE -> {
            boolean isNear = Math.abs(surprise) <= farthest;
            disbelieved = isNear ? 0 : disbelieved + 1;
            yield isNear;
          }
          case ROUTE -> Math.abs(surprise) <= farthest;
        };
    return isBelieved ? new ArrayRealVector(new double[] {surprise}) : null;
  }

  private static RealMatrix row(RoadObservation.Kind kind, int size) {
    RealMatrix row = MatrixUtils.createRealMatrix(1, size);
    row.setEntry(0, kind.state(), 1);
    switch (kind) {
      case SPEED -> {}
      case ALTITUDE -> row.setEntry(0, RECEIVER, 1);
      case ROUTE -> row.setEntry(0, DATUM, 1);
    }
    return row;
  }
}
