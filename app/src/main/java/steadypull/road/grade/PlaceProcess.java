package steadypull.road.grade;

import org.hipparchus.filtering.kalman.extended.NonLinearEvolution;
import org.hipparchus.filtering.kalman.extended.NonLinearProcess;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.jspecify.annotations.Nullable;

/**
 * How a vehicle moves on flat ground: its velocity changes by bends and pedals only. State: east,
 * north in m, then their velocities in m/s. Belongs to one filter, for it counts the fixes that it
 * did not believe.
 */
final class PlaceProcess implements NonLinearProcess<PlaceObservation> {
  static final int SIZE = 4;

  /** Bends and pedals, m/s2 (common practice: drivers with a trailer stay under 2 across). */
  private static final double ACCELERATION = 1.2;

  /** A fix farther out than this many standard deviations is a reflection. */
  private static final double FARTHEST_SURPRISE = 3.5;

  /** Reflections pass; after so many fixes in a row the receiver is right after all. */
  private static final int MOST_DISBELIEVED = 15;

  private int disbelieved;

  @Override
  public NonLinearEvolution getEvolution(
      double previousTime, RealVector previousState, PlaceObservation observation) {
    double seconds = observation.seconds() - previousTime;
    RealMatrix transition = MatrixUtils.createRealIdentityMatrix(SIZE);
    transition.setEntry(0, 2, seconds);
    transition.setEntry(1, 3, seconds);
    return new NonLinearEvolution(
        observation.seconds(),
        transition.operate(previousState),
        transition,
        noise(seconds),
        observation.isFixed() ? row() : null);
  }

  @Override
  public @Nullable RealVector getInnovation(
      PlaceObservation observation, NonLinearEvolution evolution, RealMatrix innovationCovariance) {
    double east = observation.east() - evolution.getCurrentState().getEntry(0);
    double north = observation.north() - evolution.getCurrentState().getEntry(1);
    double farthest = FARTHEST_SURPRISE * Math.sqrt(innovationCovariance.getEntry(0, 0));
    if (Math.hypot(east, north) > farthest && disbelieved < MOST_DISBELIEVED) {
      disbelieved++;
      return null;
    }
    disbelieved = 0;
    return new ArrayRealVector(new double[] {east, north});
  }

  /** White acceleration over a step (Simon, Optimal State Estimation, 2006, section 8.2). */
  private static RealMatrix noise(double seconds) {
    double power = ACCELERATION * ACCELERATION;
    double place = power * seconds * seconds * seconds / 3;
    double both = power * seconds * seconds / 2;
    RealMatrix noise = MatrixUtils.createRealMatrix(SIZE, SIZE);
    for (int axis = 0; axis < 2; axis++) {
      noise.setEntry(axis, axis, place);
      noise.setEntry(axis, axis + 2, both);
      noise.setEntry(axis + 2, axis, both);
      noise.setEntry(axis + 2, axis + 2, power * seconds);
    }
    return noise;
  }

  private static RealMatrix row() {
    RealMatrix row = MatrixUtils.createRealMatrix(2, SIZE);
    row.setEntry(0, 0, 1);
    row.setEntry(1, 1, 1);
    return row;
  }
}
