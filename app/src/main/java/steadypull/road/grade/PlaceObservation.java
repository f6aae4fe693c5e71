package steadypull.road.grade;

import org.hipparchus.filtering.kalman.Measurement;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import steadypull.road.FlatGround;

/**
 * A fix on the flat ground around a pass, or a second without one. Immutable.
 *
 * @param isFixed whether a receiver told it
 * @param east m from the pass's origin; any value if it is not fixed
 * @param north m likewise
 * @param errorMetres standard deviation of what is new in this second of the receiver's error,
 *     above 0
 */
record PlaceObservation(
    double seconds, boolean isFixed, double east, double north, double errorMetres)
    implements Measurement {
  static PlaceObservation fixed(double seconds, FlatGround.Spot spot, double errorMetres) {
    return new PlaceObservation(seconds, true, spot.east(), spot.north(), errorMetres);
  }

  static PlaceObservation none(double seconds) {
    return new PlaceObservation(seconds, false, 0, 0, 1);
  }

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
    return MatrixUtils.createRealIdentityMatrix(2).scalarMultiply(errorMetres * errorMetres);
  }
}
