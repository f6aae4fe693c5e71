package steadypull.compare;

import java.util.ArrayList;
import java.util.List;
import steadypull.channel.Channel;

/**
 * Whether the sensors of a trip agree where everything is as warm as the air: before the first
 * start of a day. A closed set.
 */
public sealed interface ColdSoak {
  /**
   * All that were read lie within 3 K of each other's middle.
   *
   * @param sensors how many, three or more
   * @param kelvin the farthest from the middle
   */
  record Agree(int sensors, double kelvin) implements ColdSoak {}

  /**
   * One or more lie farther away; the farthest is named.
   *
   * @param channel that errs
   * @param kelvin how much more it reads than the middle of all; below 0 if less
   */
  record Apart(Channel channel, double kelvin) implements ColdSoak {}

  /** The trip did not begin cold, or too little was read. */
  record NotTold() implements ColdSoak {}

  /** Reads the first seconds of a trip. */
  static ColdSoak of(TripSeconds trip) {
    return ColdSoakReading.of(trip);
  }

  /** What the trips of a comparison show of it, in sentences; empty if some agree and none errs. */
  static List<String> caveats(List<TripSeconds> trips, RunWords words) {
    List<String> caveats = new ArrayList<>();
    boolean isChecked = false;
    for (TripSeconds trip : trips) {
      switch (of(trip)) {
        case Agree _ -> isChecked = true;
        case Apart(Channel channel, double kelvin) -> {
          isChecked = true;
          caveats.add(
              words.say(
                  kelvin > 0 ? "soak.more" : "soak.less",
                  words.name(channel),
                  words.number(Math.abs(kelvin), 0),
                  trip.name()));
        }
        case NotTold() -> {}
      }
    }
    if (!isChecked && !trips.isEmpty()) {
      caveats.add(words.say("soak.none"));
    }
    return caveats;
  }
}
