package steadypull.road;

import java.util.OptionalDouble;

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
  public PositionFix {
    if (!(Math.abs(latitudeDegrees) <= 90 && Math.abs(longitudeDegrees) <= 180)) {
      throw new IllegalArgumentException(
          "A place lies between -90 and 90 degrees north and -180 and 180 degrees east, found %s, %s"
              .formatted(latitudeDegrees, longitudeDegrees));
    }
  }
}
