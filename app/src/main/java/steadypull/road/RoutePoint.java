package steadypull.road;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A place on a route, WGS 84.
 *
 * @param latitudeDegrees north, -90 to 90
 * @param longitudeDegrees east, -180 up to but not 180
 * @param elevationMetres above sea level, {@link #LOWEST_METRES} to {@link #HIGHEST_METRES}; empty:
 *     nobody says
 * @param time when somebody was there, to the microsecond, in the years 1 to 9999; empty: nobody
 *     says
 */
public record RoutePoint(
    double latitudeDegrees,
    double longitudeDegrees,
    OptionalDouble elevationMetres,
    Optional<Instant> time) {
  /**
   * No road lies lower. Estimated: the lowest on land lies some 430 m under the sea, and a
   * satellite receiver may be off by some hundred metres.
   */
  public static final double LOWEST_METRES = -1000;

  /** No road lies higher. Estimated: the highest passes some 5900 m. */
  public static final double HIGHEST_METRES = 10_000;

  private static final Instant FIRST = Instant.parse("0001-01-01T00:00:00Z");
  private static final Instant LAST = Instant.parse("9999-12-31T23:59:59.999999Z");

  public RoutePoint {
    Objects.requireNonNull(elevationMetres);
    time = time.map(moment -> moment.truncatedTo(ChronoUnit.MICROS));
    require("latitude of -90 to 90 degrees", isLatitude(latitudeDegrees), latitudeDegrees);
    require(
        "longitude of -180 up to but not 180 degrees",
        isLongitude(longitudeDegrees),
        longitudeDegrees);
    elevationMetres.ifPresent(
        metres -> require("elevation of -1000 to 10000 m", isElevation(metres), metres));
    time.ifPresent(moment -> require("time in the years 1 to 9999", isTime(moment), moment));
  }

  /** A place of which nothing else is known. */
  public RoutePoint(double latitudeDegrees, double longitudeDegrees) {
    this(latitudeDegrees, longitudeDegrees, OptionalDouble.empty(), Optional.empty());
  }

  /** Whether there is such a latitude, in degrees. */
  public static boolean isLatitude(double degrees) {
    return degrees >= -90 && degrees <= 90;
  }

  /** Whether there is such a longitude, in degrees; 180 is written -180. */
  public static boolean isLongitude(double degrees) {
    return degrees >= -180 && degrees < 180;
  }

  /** Whether a road may lie so high, in metres above the sea. */
  public static boolean isElevation(double metres) {
    return metres >= LOWEST_METRES && metres <= HIGHEST_METRES;
  }

  /** Whether a point may have been passed then. */
  public static boolean isTime(Instant moment) {
    return !moment.isBefore(FIRST) && !moment.isAfter(LAST);
  }

  private static void require(String expected, boolean holds, Object found) {
    if (!holds) {
      throw new IllegalArgumentException("A point has a " + expected + ", found " + found);
    }
  }
}
