package steadypull.ui;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import steadypull.channel.QuantityFormat;
import steadypull.drive.TripWindow;
import steadypull.store.TripSummary;

/** The words for one trip in a list and at the head of its sheet. Immutable. */
final class TripLineWords {
  private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm");
  private static final DateTimeFormatter CLOCK_SECONDS = DateTimeFormatter.ofPattern("HH:mm:ss");
  private static final long MICROS_WITH_SECONDS = 1_800_000_000L;

  private final Words words;
  private final QuantityFormat quantities;
  private final DateTimeFormatter moment;
  private final DateTimeFormatter day;

  TripLineWords(Words words, QuantityFormat quantities) {
    this.words = words;
    this.quantities = quantities;
    this.moment = DateTimeFormatter.ofPattern(words.say("trips.moment"), words.locale());
    this.day = DateTimeFormatter.ofPattern(words.say("trips.day"), words.locale());
  }

  /** When it began, by the clock that was there: {@code 14 Feb 2026, 13:02}. */
  String moment(TripSummary trip) {
    return zoned(moment.format(local(trip)), trip);
  }

  /** The same with the day of the week. */
  String day(TripSummary trip) {
    return zoned(day.format(local(trip)), trip);
  }

  private static OffsetDateTime local(TripSummary trip) {
    Instant start = trip.start();
    return start.atOffset(trip.offset().orElse(ZoneOffset.UTC));
  }

  /** Where nobody knows the offset, the words say what clock it is. */
  private static String zoned(String time, TripSummary trip) {
    return trip.offset().isPresent() ? time : time + " UTC";
  }

  /** From when to when by the clock. */
  String span(TripSummary trip) {
    OffsetDateTime start = local(trip);
    OffsetDateTime end = start.plusSeconds(Math.round(trip.durationSeconds()));
    return words.say("trips.span", CLOCK.format(start), CLOCK.format(end));
  }

  /** The same of a window of it; with seconds where that is short. */
  String span(TripSummary trip, TripWindow window) {
    if (window.equals(TripWindow.whole(trip))) {
      return span(trip);
    }
    DateTimeFormatter clock = window.widthMicros() < MICROS_WITH_SECONDS ? CLOCK_SECONDS : CLOCK;
    OffsetDateTime start = local(trip);
    return words.say(
        "trips.span",
        clock.format(start.plus(window.fromMicros(), ChronoUnit.MICROS)),
        clock.format(start.plus(window.toMicros(), ChronoUnit.MICROS)));
  }

  /** A text of at most so many letters. */
  static String shortened(String text, int most) {
    return text.length() <= most ? text : text.substring(0, most - 1).strip() + "\u2026";
  }

  String length(TripSummary trip) {
    return quantities.elapsed((long) trip.durationSeconds());
  }

  /** Empty if the way was never measured. */
  String way(TripSummary trip) {
    return trip.distanceMetres().isPresent()
        ? quantities.distance(trip.distanceMetres().getAsDouble())
        : "";
  }

  /** That it has no end yet; empty for a trip that has. */
  String state(TripSummary trip) {
    return trip.sealed() ? "" : words.say("trips.unfinished");
  }

  /** Label and tags. */
  String said(TripSummary trip) {
    return joined(
        trip.label(),
        trip.details().tags().isEmpty()
            ? ""
            : "[" + String.join(", ", trip.details().tags()) + "]");
  }

  /** Vehicle, length and way in one line. */
  String summary(TripSummary trip) {
    return summary(trip, trip.vehicleName());
  }

  /** The same with at most so many letters of the vehicle's name. */
  String summary(TripSummary trip, int most) {
    return summary(trip, shortened(trip.vehicleName(), most));
  }

  private String summary(TripSummary trip, String name) {
    return Stream.of(name, length(trip), way(trip), state(trip))
        .filter(part -> !part.isEmpty())
        .collect(Collectors.joining(", "));
  }

  private static String joined(String... parts) {
    return List.of(parts).stream()
        .filter(part -> !part.isEmpty())
        .collect(Collectors.joining("  "));
  }
}
