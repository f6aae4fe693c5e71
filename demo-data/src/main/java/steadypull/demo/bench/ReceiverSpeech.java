package steadypull.demo.bench;

import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Optional;
import steadypull.demo.road.Fix;
import steadypull.demo.road.Road;

/**
 * Says places as NMEA 0183 sentences: RMC, GSA and GGA of one second. Its day is invented. One
 * thread at a time.
 */
final class ReceiverSpeech {
  private static final LocalDateTime START = LocalDateTime.of(2026, 7, 15, 12, 0);
  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("HHmmss.SS", Locale.ROOT);
  private static final DateTimeFormatter DATE = DateTimeFormatter.ofPattern("ddMMyy", Locale.ROOT);
  private static final double KNOTS_PER_METRE_PER_SECOND = 3.6 / 1.852;

  private static final String DIMENSIONS = "GNGSA,A,3,02,05,12,15,21,25,29,,,,,,1.6,0.8,1.4";

  private Optional<Road.Place> last = Optional.empty();
  private double course;

  /**
   * Speaks of a second.
   *
   * @param fix where the receiver believes to be
   * @param here where the vehicle is; its course comes from how satellites move, not from places
   * @param metresPerSecond its speed
   */
  String of(long second, Fix fix, Road.Place here, double metresPerSecond) {
    last.filter(before -> before.metres() < here.metres())
        .ifPresent(before -> course = course(before, here));
    last = Optional.of(here);
    LocalDateTime time = START.plusSeconds(second);
    String where =
        angle(fix.latitudeDegrees(), 2, "N", "S")
            + ","
            + angle(fix.longitudeDegrees(), 3, "E", "W");
    String minimum =
        String.format(
            Locale.ROOT,
            "GNRMC,%s,A,%s,%.2f,%.1f,%s,,,A",
            TIME.format(time),
            where,
            metresPerSecond * KNOTS_PER_METRE_PER_SECOND,
            course,
            DATE.format(time));
    String fixData =
        String.format(
            Locale.ROOT,
            "GNGGA,%s,%s,1,11,0.8,%.1f,M,-12.0,M,,",
            TIME.format(time),
            where,
            fix.altitudeMetres());
    return sentence(minimum) + sentence(DIMENSIONS) + sentence(fixData);
  }

  /** Speaks of a second in which no satellite is seen. */
  String withoutSatellites(long second) {
    String time = TIME.format(START.plusSeconds(second));
    return sentence("GNRMC," + time + ",V,,,,,,,,,,N")
        + sentence("GNGGA," + time + ",,,,,0,00,99.9,,,,,,");
  }

  private static double course(Road.Place from, Road.Place to) {
    double north = to.latitude() - from.latitude();
    double east = (to.longitude() - from.longitude()) * Math.cos(Math.toRadians(from.latitude()));
    return (Math.toDegrees(Math.atan2(east, north)) + 360) % 360;
  }

  /** Degrees and decimal minutes, with the letter of the hemisphere. */
  private static String angle(double degrees, int digits, String positive, String negative) {
    long hundredThousandths = Math.round(Math.abs(degrees) * 60 * 1e5);
    long whole = hundredThousandths / 6_000_000;
    double minutes = (hundredThousandths % 6_000_000) / 1e5;
    return String.format(
        Locale.ROOT,
        "%0" + digits + "d%08.5f,%s",
        whole,
        minutes,
        degrees < 0 ? negative : positive);
  }

  private static String sentence(String body) {
    int sum = body.chars().reduce(0, (left, right) -> left ^ right);
    return "$%s*%02X\r\n".formatted(body, sum);
  }
}
