package steadypull.adapter.position;

import java.time.Instant;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** What a receiver says about one moment. A closed set; immutable. */
public sealed interface PositionReport {

  /** When the first sentence of the report arrived, on the clock that the receiver was given. */
  long nanoTime();

  /**
   * It knows where it is.
   *
   * @param nanoTime see above
   * @param latitudeDegrees WGS 84, -90 to 90, north positive
   * @param longitudeDegrees WGS 84, -180 to 180, east positive
   * @param altitudeMetres above mean sea level, -1000 to 20000; empty where it was not measured, as
   *     with three satellites only
   * @param speedKilometresPerHour over ground, 0 or more
   * @param courseDegrees true, 0 to 360; empty as a rule while standing
   * @param time the receiver's own time; empty where it tells no date. The year has two digits on
   *     the wire, and some receivers are 1024 weeks off: compare it with another clock before use
   * @param quality better than {@link FixQuality#NONE}
   * @param satellites how many were used
   * @param horizontalDilution horizontal dilution of precision, 0 or more
   */
  record Fixed(
      long nanoTime,
      double latitudeDegrees,
      double longitudeDegrees,
      OptionalDouble altitudeMetres,
      OptionalDouble speedKilometresPerHour,
      OptionalDouble courseDegrees,
      Optional<Instant> time,
      FixQuality quality,
      OptionalInt satellites,
      OptionalDouble horizontalDilution)
      implements PositionReport {
    public Fixed {
      Objects.requireNonNull(time);
      Objects.requireNonNull(quality);
      requireRange("latitude", latitudeDegrees, -90, 90);
      requireRange("longitude", longitudeDegrees, -180, 180);
      altitudeMetres.ifPresent(value -> requireRange("altitude", value, -1000, 20_000));
      speedKilometresPerHour.ifPresent(value -> requireRange("speed", value, 0, 2000));
      courseDegrees.ifPresent(value -> requireRange("course", value, 0, 360));
      if (quality == FixQuality.NONE) {
        throw new IllegalArgumentException("A fix has a quality better than NONE");
      }
    }

    private static void requireRange(String name, double value, double least, double greatest) {
      if (!(value >= least && value <= greatest)) {
        throw new IllegalArgumentException(
            "The %s of a fix lies between %s and %s, found %s"
                .formatted(name, least, greatest, value));
      }
    }
  }

  /** It hears too little to know where it is. */
  record Unfixed(long nanoTime) implements PositionReport {}
}
