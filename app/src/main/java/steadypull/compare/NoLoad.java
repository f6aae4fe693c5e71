package steadypull.compare;

import java.util.List;

/** Why a source gave no run, in a sentence with figures. */
final class NoLoad {
  private NoLoad() {}

  /**
   * The sentence.
   *
   * @param all stretches of the whole trip
   */
  static String sentence(RunSource source, List<Stretch> all, RunWords words) {
    TripSeconds trip = source.trip();
    if (trip.power().basis() == PullPower.Basis.NOTHING) {
      return words.say("no-load.nothing");
    }
    if (source.span().isPresent() && !all.isEmpty()) {
      TripPart.Span span = source.span().get();
      return words.say(
          "no-load.part",
          words.number(span.fromSeconds(), 0),
          words.number(span.toSeconds(), 0),
          LoadSearch.SHORTEST_SECONDS,
          String.join(
              ", ",
              all.stream()
                  .map(each -> words.say("no-load.span", each.onset(), each.end()))
                  .toList()));
    }
    return words.say(
        "no-load.most",
        words.power(LoadSearch.LEAST_KILOWATTS),
        LoadSearch.SHORTEST_SECONDS,
        words.power(most(trip)));
  }

  private static double most(TripSeconds trip) {
    double most = 0;
    for (int second = 0; second + LoadSearch.SHORTEST_SECONDS <= trip.seconds(); second++) {
      most =
          Math.max(most, trip.power().mean(second, second + LoadSearch.SHORTEST_SECONDS).orElse(0));
    }
    return most;
  }
}
