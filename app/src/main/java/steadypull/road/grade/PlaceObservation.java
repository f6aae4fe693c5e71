package steadypull.road.grade;

import org.hipparchus.filtering.kalman.Measurement;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;

/**
 * A fix on the flat ground around a pass, or a second without one. Immutable.
 *
 * @param isFixed whether a receiver told it
 * @param east m from the pass's origin; any value if it is not fixed
 * @param north m likewise
 */
record PlaceObservation(double seconds, boolean isFixed, double east, double north)
    implements Measurement {
  /** What is new in each second of a receiver's error, m (estimated). */
  private static final double ERROR_METRES = 2;

  @Override
  public double getTime() {
    return seconds;
  }

  @Override
  public RealVector getValue() {
    return new ArrayRealVector(new double[] {east, north});
  }

  @Override
  public RealMatrix getCovariance() {
    return MatrixUtils.createRealIdentityMatrix(2).scalarMultiply(ERROR_METRES * ERROR_METRES);
  }
}
