package steadypull.ui;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import java.util.function.Function;
import java.util.stream.Stream;
import steadypull.channel.QuantityFormat;
import steadypull.drive.WholeTrip;
import steadypull.store.TripDetails;
import steadypull.vehicle.Rig;

/**
 * Understands what was typed of a trip. A field that nobody touched keeps what was known to the
 * last bit; one that cannot be is refused by itself, and all others count.
 */
final class TripSaidReader {
  private static final double COLDEST_CELSIUS = -60;
  private static final double HOTTEST_CELSIUS = 60;
  private static final double LIGHTEST_KILOGRAMS = 300;
  private static final double HEAVIEST_KILOGRAMS = 60_000;
  private static final double HEAVIEST_TRAILER_KILOGRAMS = 50_000;

  private final Words words;
  private final QuantityFormat quantities;
  private final TripSaid typed;
  private final TripSaid shown;
  private final List<String> refusals = new ArrayList<>();

  /**
   * What is said now.
   *
   * @param refusal why some of it cannot be; empty if all can
   */
  record Reading(TripDetails details, Rig rig, Optional<String> refusal) {}

  private TripSaidReader(Words words, QuantityFormat quantities, TripSaid typed, TripSaid shown) {
    this.words = words;
    this.quantities = quantities;
    this.typed = typed;
    this.shown = shown;
  }

  /**
   * Reads the fields.
   *
   * @param before the trip as it was when the fields were filled
   * @param shown what the fields held then
   * @param typed what they hold now
   */
  static Reading read(
      WholeTrip before, TripSaid shown, TripSaid typed, Words words, QuantityFormat quantities) {
    TripSaidReader reader = new TripSaidReader(words, quantities, typed, shown);
    TripDetails details = reader.details(before.summary().details());
    Rig rig = reader.rig(before.rig());
    return new Reading(details, rig, reader.refusals.stream().findFirst());
  }

  private TripDetails details(TripDetails before) {
    return new TripDetails(
        text(TripSaid::label, before.label()),
        text(TripSaid::note, before.note()),
        isTouched(TripSaid::tags) ? tags(before.tags()) : before.tags(),
        text(TripSaid::fitted, before.fitted()),
        text(TripSaid::outside, before.outside()),
        number(
            TripSaid::outsideTemperature,
            before.outsideCelsius(),
            new Range(
                "trips.field.outsideTemp",
                COLDEST_CELSIUS,
                HOTTEST_CELSIUS,
                quantities::celsius,
                quantities::outsideTemperature)));
  }

  private Rig rig(Rig before) {
    OptionalDouble both =
        number(
            TripSaid::mass,
            before.massKilograms(),
            mass("trips.field.mass", LIGHTEST_KILOGRAMS, HEAVIEST_KILOGRAMS));
    OptionalDouble trailer =
        number(
            TripSaid::trailerMass,
            before.trailerMassKilograms(),
            mass("trips.field.trailer", 0, HEAVIEST_TRAILER_KILOGRAMS));
    if (both.isPresent() && trailer.isPresent() && trailer.getAsDouble() >= both.getAsDouble()) {
      refusals.add(words.say("trips.heavier", typed.mass(), typed.trailerMass()));
      return before;
    }
    return before.withMasses(both, trailer);
  }

  private Range mass(String key, double lowest, double highest) {
    return new Range(key, lowest, highest, quantities::kilograms, this::typedMass);
  }

  private String typedMass(double kilograms) {
    return quantities.typedMass(kilograms) + " " + quantities.massUnit();
  }

  private boolean isTouched(Function<TripSaid, String> field) {
    return !field.apply(typed).equals(field.apply(shown));
  }

  private String text(Function<TripSaid, String> field, String before) {
    return isTouched(field) ? field.apply(typed).strip() : before;
  }

  /** A tag that holds a comma is known from before and stays whole. */
  private List<String> tags(List<String> before) {
    String rest = typed.tags();
    List<String> tags = new ArrayList<>();
    for (String known : before) {
      if (known.contains(",") && rest.contains(known)) {
        tags.add(known);
        rest = rest.replace(known, "");
      }
    }
    Stream.of(rest.split(",")).map(String::strip).filter(tag -> !tag.isEmpty()).forEach(tags::add);
    return tags;
  }

  /** What a number may be, and how it is told. */
  private record Range(
      String key,
      double lowest,
      double highest,
      DoubleUnaryOperator fromTyped,
      Function<Double, String> told) {}

  private OptionalDouble number(
      Function<TripSaid, String> field, OptionalDouble before, Range range) {
    String text = field.apply(typed).strip();
    if (!isTouched(field)) {
      return before;
    }
    if (text.isEmpty()) {
      return OptionalDouble.empty();
    }
    OptionalDouble value = parse(text, range);
    if (value.isEmpty()) {
      refusals.add(
          words.say(
              "trips.refused",
              words.say(range.key()),
              range.told().apply(range.lowest()),
              range.told().apply(range.highest()),
              text));
      return before;
    }
    return value;
  }

  /** With a comma or a point before the decimals, and either minus. */
  private static OptionalDouble parse(String text, Range range) {
    try {
      double typed = Double.parseDouble(text.replace(',', '.').replace('\u2212', '-'));
      double value = range.fromTyped().applyAsDouble(typed);
      return value >= range.lowest() && value <= range.highest()
          ? OptionalDouble.of(value)
          : OptionalDouble.empty();
    } catch (NumberFormatException noNumber) {
      return OptionalDouble.empty();
    }
  }
}
