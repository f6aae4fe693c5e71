package steadypull.road.load;

import org.hipparchus.filtering.kalman.Measurement;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;

/** A step of a trip as the filter takes it. Immutable. */
record HeadObservation(HeadStep step) implements Measurement {
  /**
   * What is new in each second of a receiver's altitude, and what the speed in whole km/h adds:
   * 0.17 m of height at 20 m/s (estimated).
   */
  private static final double ERROR_METRES = 0.8;

  @Override
  public double getTime() {
    return step.seconds();
  }

  @Override
  public RealVector getValue() {
    return new ArrayRealVector(new double[] {step.headMetres().orElse(0)});
  }

  @Override
  public RealMatrix getCovariance() {
    return MatrixUtils.createRealDiagonalMatrix(new double[] {ERROR_METRES * ERROR_METRES});
  }
}
