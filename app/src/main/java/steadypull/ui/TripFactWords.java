package steadypull.ui;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import steadypull.channel.QuantityFormat;
import steadypull.drive.TripPicture;
import steadypull.drive.WholeTrip;
import steadypull.store.LinkIdentity;
import steadypull.store.TripDetails;
import steadypull.store.TripEvent;
import steadypull.store.TripSummary;
import steadypull.store.TripSummary.Gap;
import steadypull.vehicle.Rig;

/** What is told of a trip, as captions and values; what was not told is absent. */
final class TripFactWords {
  private static final double MICROS_PER_SECOND = 1e6;

  /**
   * One line of the sheet.
   *
   * @param caption what it is
   * @param value one or more lines
   * @param tone how loud
   */
  record Fact(String caption, String value, Tone tone) {}

  private final Words words;
  private final QuantityFormat quantities;
  private final List<Fact> facts = new ArrayList<>();

  private TripFactWords(Words words, QuantityFormat quantities) {
    this.words = words;
    this.quantities = quantities;
  }

  static List<Fact> of(TripsModel.ChosenTrip chosen, Words words, QuantityFormat quantities) {
    TripFactWords told = new TripFactWords(words, quantities);
    told.describe(chosen);
    return List.copyOf(told.facts);
  }

  private void describe(TripsModel.ChosenTrip chosen) {
    WholeTrip whole = chosen.trip();
    TripSummary trip = whole.summary();
    if (!trip.sealed()) {
      caution("state", words.say("trips.unfinishedFact"));
    }
    damage(chosen);
    put("rig", rig(whole.rig()));
    describe(trip.details());
    whole.marks().forEach(mark -> put("mark", mark(mark)));
    put("gaps", spans(trip.gaps()));
    put(
        "samples",
        words.say("trips.samples", grouped(trip.samples()), whole(trip.channels().size())));
    describe(trip.link());
    put("source", trip.source());
    put("software", trip.softwareVersion());
    put("id", trip.id());
    put("ownId", trip.origin());
  }

  /** What the drawing came upon, until all is known. */
  private void damage(TripsModel.ChosenTrip chosen) {
    if (chosen.damage().isPresent()) {
      if (!chosen.damage().get().isNone()) {
        String missing = new TripDamageWords(words, quantities).missing(chosen.damage().get());
        caution("damaged", words.say("trips.damagedFact", missing));
      }
      return;
    }
    List<Gap> drawn = chosen.shown().map(TripPicture::damaged).orElse(List.of());
    if (!drawn.isEmpty()) {
      caution("damaged", words.say("trips.damagedFact", spans(drawn)));
    }
  }

  private void describe(TripDetails details) {
    put("label", details.label());
    put("note", details.note());
    put("tags", String.join(", ", details.tags()));
    put("fitted", details.fitted());
    put("outside", outside(details));
  }

  private String outside(TripDetails details) {
    String read =
        details.outsideCelsius().isPresent()
            ? quantities.outsideTemperature(details.outsideCelsius().getAsDouble())
            : "";
    return joined(read, details.outside());
  }

  private void describe(LinkIdentity link) {
    put("adapter", link.adapter());
    put("protocol", link.protocol());
    put("numberHash", link.vehicleNumberHash());
  }

  private String rig(Rig rig) {
    return joined(
        mass("trips.inAll", rig.massKilograms()),
        mass("trips.trailer", rig.trailerMassKilograms()));
  }

  private String mass(String key, OptionalDouble kilograms) {
    return kilograms.isPresent() ? words.say(key, quantities.mass(kilograms.getAsDouble())) : "";
  }

  private String mark(TripEvent mark) {
    return (elapsed(mark.timeMicros() / MICROS_PER_SECOND) + "  " + mark.detail()).strip();
  }

  private String spans(List<Gap> gaps) {
    return gaps.stream()
        .map(gap -> words.say("trips.span", elapsed(gap.fromSeconds()), elapsed(gap.toSeconds())))
        .collect(Collectors.joining(", "));
  }

  private String elapsed(double seconds) {
    return quantities.elapsed((long) seconds);
  }

  private String grouped(long number) {
    return String.format(words.locale(), "%,d", number);
  }

  private String whole(int number) {
    return quantities.whole(number);
  }

  private static String joined(String... parts) {
    return Stream.of(parts).filter(part -> !part.isEmpty()).collect(Collectors.joining(", "));
  }

  private void put(String key, String value) {
    if (!value.isBlank()) {
      facts.add(new Fact(words.say("trips.fact." + key), value, Tone.NEUTRAL));
    }
  }

  private void caution(String key, String value) {
    facts.add(new Fact(words.say("trips.fact." + key), value, Tone.CAUTION));
  }
}
