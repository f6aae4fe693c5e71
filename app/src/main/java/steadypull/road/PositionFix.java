package steadypull.road;

import java.util.Optional;
import java.util.OptionalDouble;
import steadypull.channel.Channels;

/**
 * Where a satellite receiver believed to be at a moment. WGS 84. Immutable.
 *
 * @param seconds since the trip began
 * @param latitudeDegrees -90 to 90
 * @param longitudeDegrees -180 to 180
 * @param altitudeMetres above mean sea level, if it was told
 */
public record PositionFix(
    double seconds,
    double latitudeDegrees,
    double longitudeDegrees,
    OptionalDouble altitudeMetres) {
  private static final double MICROS_PER_SECOND = 1e6;

  /** Nearer to a pole no {@link FlatGround} holds, and nobody drives on roads. */
  private static final double NEAREST_POLE_DEGREES = 89;

  public PositionFix {
    if (!isOnEarth(latitudeDegrees, longitudeDegrees)) {
      throw new IllegalArgumentException(
          "A place lies between -90 and 90 degrees north and -180 and 180 degrees east, found %s, %s"
              .formatted(latitudeDegrees, longitudeDegrees));
    }
  }

  /**
   * The fix of the second that ends at a moment; empty if none was told in it, or one off the earth
   * or at a pole, as loggers write without a fix. Who asks at each whole second gets each fix once.
   *
   * @param told latitude, longitude and altitude that came before that moment
   * @param timeMicros microseconds since the trip began
   */
  public static Optional<PositionFix> ofSecondBefore(LatestSamples told, long timeMicros) {
    OptionalDouble latitude = told.inSecondBefore(Channels.LATITUDE, timeMicros);
    OptionalDouble longitude = told.inSecondBefore(Channels.LONGITUDE, timeMicros);
    return isOnEarth(latitude.orElse(Double.NaN), longitude.orElse(Double.NaN))
            && Math.abs(latitude.getAsDouble()) <= NEAREST_POLE_DEGREES
        ? Optional.of(
            new PositionFix(
                timeMicros / MICROS_PER_SECOND,
                latitude.getAsDouble(),
                longitude.getAsDouble(),
                told.inSecondBefore(Channels.ALTITUDE, timeMicros)))
        : Optional.empty();
  }

  private static boolean isOnEarth(double latitudeDegrees, double longitudeDegrees) {
    return Math.abs(latitudeDegrees) <= 90 && Math.abs(longitudeDegrees) <= 180;
  }
}
