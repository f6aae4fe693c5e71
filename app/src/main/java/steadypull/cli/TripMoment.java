package steadypull.cli;

import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Optional;
import steadypull.store.TripSummary;

/** When a trip began, as it was read on a clock there; UTC where nobody knows. */
final class TripMoment {
  private static final DateTimeFormatter LOCAL =
      DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm:ss xxx", Locale.ROOT);
  private static final DateTimeFormatter UTC =
      DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm:ss 'UTC'", Locale.ROOT)
          .withZone(ZoneOffset.UTC);

  private TripMoment() {}

  /** For people: {@code 2026-07-15 10:45:12 -07:00}. */
  static String text(TripSummary trip) {
    Instant start = trip.start();
    return trip.offset()
        .map(offset -> LOCAL.format(start.atOffset(offset)))
        .orElseGet(() -> UTC.format(start));
  }

  /** In RFC 3339, with the local offset; empty where nobody knows it. */
  static Optional<String> local(TripSummary trip) {
    return trip.offset()
        .map(
            offset -> DateTimeFormatter.ISO_OFFSET_DATE_TIME.format(trip.start().atOffset(offset)));
  }
}
