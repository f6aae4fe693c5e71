package steadypull.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import steadypull.channel.Channel;
import steadypull.channel.QuantityFormat;
import steadypull.drive.WholeTrip;
import steadypull.store.LinkIdentity;
import steadypull.store.TripDamage;
import steadypull.store.TripDetails;
import steadypull.store.TripEvent;
import steadypull.store.TripSummary;

/** Trips for people. */
final class TripText {
  private static final int CAPTION_WIDTH = 14;
  private static final int VEHICLE_WIDTH = 20;
  private static final int WORDS_WIDTH = 60;
  private static final int TEXT_WIDTH = 80 - CAPTION_WIDTH;
  private static final double MICROS_PER_SECOND = 1e6;

  private final QuantityFormat format;
  private final StringBuilder text = new StringBuilder();

  private TripText(QuantityFormat format) {
    this.format = format;
  }

  /** One line in a list. */
  static String line(TripSummary trip, QuantityFormat format) {
    return String.format(
            Locale.ROOT,
            "%-21s  %-20s  %-26s  %8s  %9s  %8d samples  %s",
            trip.id(),
            Printable.line(trip.vehicleName(), VEHICLE_WIDTH),
            TripMoment.text(trip),
            format.elapsed((long) trip.durationSeconds()),
            distance(trip, format),
            trip.samples(),
            Printable.line(words(trip), WORDS_WIDTH))
        .stripTrailing();
  }

  /** One trip in full, with what cannot be read and the sentences that are said of its rig. */
  static String of(
      WholeTrip trip, TripDamage damage, QuantityFormat format, List<String> ofTheRig) {
    TripText told = new TripText(format);
    told.describe(trip, damage, ofTheRig);
    return told.text.toString();
  }

  private static String words(TripSummary trip) {
    TripDetails details = trip.details();
    return Stream.of(
            trip.sealed() ? "" : "unfinished",
            details.label(),
            details.tags().isEmpty() ? "" : "[" + String.join(", ", details.tags()) + "]",
            details.note())
        .filter(each -> !each.isEmpty())
        .collect(Collectors.joining("  "));
  }

  private static String distance(TripSummary trip, QuantityFormat format) {
    return trip.distanceMetres().isPresent()
        ? format.distance(trip.distanceMetres().getAsDouble())
        : "";
  }

  private void describe(WholeTrip whole, TripDamage damage, List<String> ofTheRig) {
    TripSummary trip = whole.summary();
    put("trip", trip.id() + (trip.sealed() ? "" : ", still being recorded"));
    put("vehicle", trip.vehicleName() + mass(whole));
    putLines("rig", Printable.wrapped(String.join(" ", ofTheRig), TEXT_WIDTH));
    put("start", TripMoment.text(trip));
    String distance = distance(trip, format);
    put("length", elapsed(trip.durationSeconds()) + (distance.isEmpty() ? "" : ", " + distance));
    describe(trip.details());
    put("samples", Long.toString(trip.samples()));
    putList("channels", trip.channels().stream().map(Channel::header).toList());
    putList(
        "gaps",
        trip.gaps().stream()
            .map(gap -> elapsed(gap.fromSeconds()) + " to " + elapsed(gap.toSeconds()))
            .toList());
    damage.parts().forEach(part -> put("damaged gap", DamageWords.gap(part, format)));
    put("damaged", damage.areEventsLost() ? "some events" : "");
    whole.marks().forEach(mark -> put("mark", (at(mark) + "  " + mark.detail()).strip()));
    putList(
        "events",
        whole.eventCounts().entrySet().stream()
            .map(count -> count.getKey().word() + " " + count.getValue())
            .toList());
    put("advice", AdviceRecordText.of(whole.advice()));
    describe(trip.link());
    put("source", trip.source());
    put("software", trip.softwareVersion());
    put("own id", trip.origin());
  }

  private void describe(TripDetails details) {
    put("label", details.label());
    putLines("note", details.note());
    putList("tags", details.tags());
    put("fitted", details.fitted());
    put("outside", details.outside());
    details
        .outsideCelsius()
        .ifPresent(celsius -> put("outside temp", format.outsideTemperature(celsius)));
  }

  private void describe(LinkIdentity link) {
    put("adapter", link.adapter());
    put("protocol", link.protocol());
    put("number hash", link.vehicleNumberHash());
  }

  private String mass(WholeTrip whole) {
    return mass(whole.rig().massKilograms(), ", %s in all")
        + mass(whole.rig().trailerMassKilograms(), ", trailer %s");
  }

  private String mass(OptionalDouble kilograms, String words) {
    return kilograms.isPresent() ? words.formatted(format.mass(kilograms.getAsDouble())) : "";
  }

  private String elapsed(double seconds) {
    return format.elapsed((long) seconds);
  }

  private String at(TripEvent event) {
    return elapsed(event.timeMicros() / MICROS_PER_SECOND);
  }

  /** What was not told takes no line. */
  private void put(String caption, String value) {
    putLines(caption, Printable.line(value));
  }

  private void putLines(String caption, String value) {
    if (!value.isEmpty()) {
      text.append(String.format(Locale.ROOT, "%-" + CAPTION_WIDTH + "s", caption))
          .append(Printable.indented(value, CAPTION_WIDTH))
          .append('\n');
    }
  }

  private void putList(String caption, List<String> values) {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder();
    for (String value : values) {
      String shown = Printable.line(value);
      if (!line.isEmpty() && line.length() + shown.length() + 3 > TEXT_WIDTH) {
        lines.add(line.append(',').toString());
        line.setLength(0);
      }
      line.append(line.isEmpty() ? "" : ", ").append(shown);
    }
    lines.add(line.toString());
    putLines(caption, String.join("\n", lines));
  }
}
