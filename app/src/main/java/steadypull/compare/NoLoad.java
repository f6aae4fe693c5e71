package steadypull.compare;

import java.util.List;
import java.util.Locale;

/** Why a source gave no run, in a sentence with figures. */
final class NoLoad {
  private NoLoad() {}

  /**
   * The sentence.
   *
   * @param all stretches of the whole trip
   */
  static String sentence(RunSource source, List<Stretch> all) {
    TripSeconds trip = source.trip();
    if (trip.power().basis() == PullPower.Basis.NOTHING) {
      return "No load can be told: neither torque with engine speed, fuel, air flow, engine load"
          + " nor the power at the wheels was heard.";
    }
    if (source.span().isPresent() && !all.isEmpty()) {
      return String.format(
          Locale.ROOT,
          "Between %.0f s and %.0f s no load lasts 30 s; the trip has loads from %s.",
          source.span().get().fromSeconds(),
          source.span().get().toSeconds(),
          words(all));
    }
    return String.format(
        Locale.ROOT,
        "No load of 25 kW or more was held for 30 s; the most was %.0f kW.",
        most(trip));
  }

  private static String words(List<Stretch> all) {
    return String.join(
        ", ", all.stream().map(each -> each.onset() + " s to " + each.end() + " s").toList());
  }

  private static double most(TripSeconds trip) {
    double most = 0;
    for (int second = 0; second + 30 <= trip.seconds(); second++) {
      most = Math.max(most, trip.power().mean(second, second + 30).orElse(0));
    }
    return most;
  }
}
