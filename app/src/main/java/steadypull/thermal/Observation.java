package steadypull.thermal;

import org.hipparchus.filtering.kalman.Measurement;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;

/**
 * One moment of one store for the filter: the load since the last moment and, if one came, a
 * temperature.
 *
 * @param seconds time
 * @param load what acted since the last moment
 * @param around degC of every store, by {@link Store#ordinal()}
 * @param measured whether a temperature came
 * @param celsius that temperature; 0 if none came
 */
record Observation(double seconds, Load load, double[] around, boolean measured, double celsius)
    implements Measurement {
  /**
   * Standard deviation of one reading. Steps of 1 degC alone give 0.29 K, but neighbouring readings
   * share their rounding error and the sensor's lag, so that each counts for less (estimated).
   */
  private static final double READING_KELVIN = 0.7;

  @Override
  public double getTime() {
    return seconds;
  }

  @Override
  public RealVector getValue() {
    return new ArrayRealVector(new double[] {celsius});
  }

  @Override
  public RealMatrix getCovariance() {
    return MatrixUtils.createRealDiagonalMatrix(new double[] {READING_KELVIN * READING_KELVIN});
  }
}
