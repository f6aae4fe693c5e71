package steadypull.exchange;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.temporal.TemporalAccessor;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoublePredicate;
import java.util.regex.Pattern;
import steadypull.road.RoutePoint;

/**
 * Values as GPX files hold them, judged. Kinder than the schema where nothing can be misunderstood:
 * a number may have an exponent, an element may be empty, a time may lack its zone, which is UTC.
 */
final class GpxValue {
  private static final int LONGEST = 100;

  private static final Pattern NUMBER =
      Pattern.compile("[+-]?(?:[0-9]+(?:\\.[0-9]*)?|\\.[0-9]+)(?:[eE][+-]?[0-9]{1,3})?");

  private GpxValue() {}

  /** Degrees north; a point must have it. */
  static double latitude(Optional<String> text, CellPlace place) throws TableException {
    String expected = "lat from -90 to 90 degrees";
    return number(required(text, expected, place), expected, RoutePoint::isLatitude, place);
  }

  /** Degrees east; a point must have it. */
  static double longitude(Optional<String> text, CellPlace place) throws TableException {
    String expected = "lon from -180 up to but not 180 degrees";
    return number(required(text, expected, place), expected, RoutePoint::isLongitude, place);
  }

  /** Metres above the sea, or empty if nothing stands there. */
  static OptionalDouble elevation(String text, CellPlace place) throws TableException {
    String expected =
        "metres from %d to %d"
            .formatted((long) RoutePoint.LOWEST_METRES, (long) RoutePoint.HIGHEST_METRES);
    return text.isEmpty()
        ? OptionalDouble.empty()
        : OptionalDouble.of(number(text, expected, RoutePoint::isElevation, place));
  }

  /** A moment, or empty if nothing stands there. */
  static Optional<Instant> time(String text, CellPlace place) throws TableException {
    if (text.isEmpty()) {
      return Optional.empty();
    }
    try {
      return Optional.of(moment(text)).filter(RoutePoint::isTime).or(GpxValue::noSuchTime);
    } catch (DateTimeException e) {
      throw place.refusal("a time such as 2026-07-15T17:45:12.000Z", CellPlace.quoted(text));
    }
  }

  private static Optional<Instant> noSuchTime() {
    throw new DateTimeException("outside of the years 1 to 9999");
  }

  private static Instant moment(String text) {
    TemporalAccessor parsed =
        DateTimeFormatter.ISO_DATE_TIME.parseBest(text, OffsetDateTime::from, LocalDateTime::from);
    return switch (parsed) {
      case OffsetDateTime withZone -> withZone.toInstant();
      case LocalDateTime withoutZone -> withoutZone.toInstant(ZoneOffset.UTC);
      default -> throw new DateTimeException("no date with a time");
    };
  }

  private static String required(Optional<String> text, String expected, CellPlace place)
      throws TableException {
    if (text.isEmpty()) {
      throw place.refusal(expected, "nothing");
    }
    return text.get();
  }

  private static double number(
      String text, String expected, DoublePredicate isPossible, CellPlace place)
      throws TableException {
    if (text.length() > LONGEST || !NUMBER.matcher(text).matches()) {
      throw place.refusal(expected, CellPlace.quoted(text), " Write it such as -114.473967.");
    }
    double value = Double.parseDouble(text);
    if (!isPossible.test(value)) {
      throw place.refusal(expected, CellPlace.quoted(text));
    }
    return value;
  }
}
