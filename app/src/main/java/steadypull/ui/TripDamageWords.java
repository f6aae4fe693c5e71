package steadypull.ui;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import steadypull.channel.QuantityFormat;
import steadypull.store.LostPart;
import steadypull.store.TripDamage;

/** What is said of the part of a trip that cannot be read. Immutable. */
final class TripDamageWords {
  /** More would be longer than the sheet. */
  private static final int MOST_PARTS = 3;

  private static final int MOST_CHANNELS = 3;

  private final Words words;
  private final QuantityFormat quantities;

  TripDamageWords(Words words, QuantityFormat quantities) {
    this.words = words;
    this.quantities = quantities;
  }

  /**
   * How much is missing, from when to when and of which channels; commas and semicolons between.
   */
  String missing(TripDamage damage) {
    List<String> told = new ArrayList<>();
    damage.parts().stream().limit(MOST_PARTS).map(this::missing).forEach(told::add);
    if (damage.parts().size() > MOST_PARTS) {
      told.add(
          words.say(
              "trips.lostMore",
              grouped(
                  damage.parts().stream().skip(MOST_PARTS).mapToLong(LostPart::samples).sum())));
    }
    if (damage.areEventsLost()) {
      told.add(words.say("trips.lostEvents"));
    }
    return String.join("; ", told);
  }

  private String missing(LostPart part) {
    String span =
        words.say(
            "trips.lostPart",
            grouped(part.samples()),
            quantities.elapsed((long) part.fromSeconds()),
            quantities.elapsed((long) Math.ceil(part.toSeconds().orElse(part.fromSeconds()))));
    return part.channels().isEmpty() ? span : words.say("trips.lostOf", span, channels(part));
  }

  private String channels(LostPart part) {
    String named =
        part.channels().stream()
            .limit(MOST_CHANNELS)
            .map(words::name)
            .collect(Collectors.joining(", "));
    return part.channels().size() > MOST_CHANNELS ? named + "\u2026" : named;
  }

  private String grouped(long number) {
    return String.format(words.locale(), "%,d", number);
  }
}
