package steadypull.ui;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import steadypull.channel.QuantityFormat;
import steadypull.drive.WholeTrip;

/** Names what has changed of a trip. */
final class TripSaidChanges {
  private final Words words;
  private final TripSaid before;
  private final TripSaid after;
  private final List<String> changed = new ArrayList<>();

  private TripSaidChanges(Words words, TripSaid before, TripSaid after) {
    this.words = words;
    this.before = before;
    this.after = after;
  }

  /** The captions of the fields that differ, with commas between; empty if none does. */
  static String of(WholeTrip before, WholeTrip after, Words words, QuantityFormat quantities) {
    TripSaidChanges changes =
        new TripSaidChanges(words, TripSaid.of(before, quantities), TripSaid.of(after, quantities));
    changes.compare("field.label", TripSaid::label);
    changes.compare("fact.tags", TripSaid::tags);
    changes.compare("field.note", TripSaid::note);
    changes.compare("field.fitted", TripSaid::fitted);
    changes.compare("field.outside", TripSaid::outside);
    changes.compare("field.outsideTemp", TripSaid::outsideTemperature);
    changes.compare("field.mass", TripSaid::mass);
    changes.compare("field.trailer", TripSaid::trailerMass);
    return String.join(", ", changes.changed);
  }

  private void compare(String key, Function<TripSaid, String> field) {
    if (!field.apply(before).equals(field.apply(after))) {
      changed.add(words.say("trips." + key));
    }
  }
}
