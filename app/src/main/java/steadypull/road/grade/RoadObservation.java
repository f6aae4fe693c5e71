package steadypull.road.grade;

import java.util.Optional;
import org.hipparchus.filtering.kalman.Measurement;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;

/**
 * One number that was told of the road, and what pulled since the moment before. Immutable.
 *
 * @param seconds time; the same as before for a second number of one moment
 * @param kind what the number is
 * @param value m/s or m
 * @param pull what pulled since the moment before; empty if that is unknown
 * @param turn a turn back since the moment before, if there was one
 */
record RoadObservation(
    double seconds, Kind kind, double value, Optional<Pull> pull, Optional<Turn> turn)
    implements Measurement {

  /** What can be told. A closed set. */
  enum Kind {
    /** Road speed in whole km/h: 0.08 m/s, and the sensor's own lag (estimated). */
    SPEED(GradeProcess.SPEED, 0.12),
    /** A receiver's altitude, what is new in each second of its error (estimated). */
    ALTITUDE(GradeProcess.HEIGHT, 0.5),
    /**
     * A route's elevation at the vehicle's place. A file's elevations err by some 2.5 m and alike
     * over 300 m; told twice in that length, each counts with the root of two of that, and a little
     * for the place (estimated).
     */
    ROUTE(GradeProcess.HEIGHT, 4);

    private final int state;
    private final double error;

    Kind(int state, double error) {
      this.state = state;
      this.error = error;
    }

    int state() {
      return state;
    }
  }

  /**
   * Mean pull over a step.
   *
   * @param traction at its end
   * @param newtonsPerKilogram mean over the step
   * @param error of that mean, N/kg: how far the pull has moved within the step
   */
  record Pull(Traction traction, double newtonsPerKilogram, double error) {}

  /** Whether brakes may have been on since the moment before. */
  boolean isBraked() {
    return pull.filter(known -> !known.traction().isPulling()).isPresent();
  }

  boolean isTurnedOnTheSpot() {
    return turn.filter(Turn::isOnTheSpot).isPresent();
  }

  @Override
  public double getTime() {
    return seconds;
  }

  @Override
  public RealVector getValue() {
    return new ArrayRealVector(new double[] {value});
  }

  @Override
  public RealMatrix getCovariance() {
    return MatrixUtils.createRealDiagonalMatrix(new double[] {kind.error * kind.error});
  }
}
