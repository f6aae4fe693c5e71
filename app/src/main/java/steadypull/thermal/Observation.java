package steadypull.thermal;

import java.util.OptionalDouble;
import org.hipparchus.filtering.kalman.Measurement;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;

/**
 * One moment of one store for the filter: what acted on it since the last moment and, if one came,
 * a temperature. Immutable.
 */
final class Observation implements Measurement {
  private final double seconds;
  private final Load load;
  private final double[] around;
  private final OptionalDouble celsius;
  private final double readingKelvin;
  private final double wander;

  /**
   * Takes a copy of the temperatures around.
   *
   * @param seconds time
   * @param load what acted since the last moment
   * @param around degC of every store, by {@link Store#index()}
   * @param celsius the reading, if one came
   * @param readingKelvin standard deviation of a reading
   * @param wander of the temperature since the last moment, K per square root of a second
   */
  Observation(
      double seconds,
      Load load,
      double[] around,
      OptionalDouble celsius,
      double readingKelvin,
      double wander) {
    this.seconds = seconds;
    this.load = load;
    this.around = around.clone();
    this.celsius = celsius;
    this.readingKelvin = readingKelvin;
    this.wander = wander;
  }

  /** Wander of the temperature, K per square root of a second. */
  double wander() {
    return wander;
  }

  Load load() {
    return load;
  }

  /** Not to be written to. */
  double[] around() {
    return around;
  }

  /** Whether a temperature came. */
  boolean isMeasured() {
    return celsius.isPresent();
  }

  @Override
  public double getTime() {
    return seconds;
  }

  /** The reading, degC; 0 if none came, which the process then ignores. */
  @Override
  public RealVector getValue() {
    return new ArrayRealVector(new double[] {celsius.orElse(0)});
  }

  @Override
  public RealMatrix getCovariance() {
    return MatrixUtils.createRealDiagonalMatrix(new double[] {readingKelvin * readingKelvin});
  }
}
