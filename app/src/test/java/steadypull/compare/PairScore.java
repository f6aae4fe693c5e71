package steadypull.compare;

import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.thermal.Belief;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.Vehicle;

/** How comparisons of plant pairs fare: intervals that hold the truth, and claims. One thread. */
final class PairScore {
  private static final Vehicle VEHICLE = Vehicle.unknown("invented", CoolingLayout.WATER_TO_AIR);

  private final Channel channel;
  private final Function<PlantPair, Truth> truth;
  private final Map<String, Integer> held = new LinkedHashMap<>();
  private final Map<String, Integer> heldByHalf = new LinkedHashMap<>();
  private final Map<String, Double> widths = new LinkedHashMap<>();
  private final Map<Change, Integer> all = new LinkedHashMap<>();
  private final Map<Change, Integer> lasting = new LinkedHashMap<>();
  private final Map<Change, Integer> delaying = new LinkedHashMap<>();
  private int pairs;

  private PairScore(Channel channel, Function<PlantPair, Truth> truth) {
    this.channel = channel;
    this.truth = truth;
  }

  static PairScore ofChargeCoolant() {
    return new PairScore(Channels.CHARGE_COOLANT_TEMP, PlantPair::charge);
  }

  static PairScore ofChargeAir() {
    return new PairScore(Channels.CHARGE_AIR_TEMP_OUT, PlantPair::chargeAir);
  }

  static PairScore ofEngineCoolant() {
    return new PairScore(Channels.ENGINE_COOLANT_TEMP, PlantPair::engine);
  }

  /** Compares a pair. */
  Comparison accept(PlantPair pair) {
    Comparison found = Comparing.of(pair.runs(), channel, VEHICLE, Conditions.OF_THE_RUNS);
    Truth real = truth.apply(pair);
    pairs++;
    for (GainAt at : found.at()) {
      score("gain at " + at.seconds() + " s", at.gain().orElseThrow(), real.gain(at.seconds()));
    }
    score("settled gain", found.settledGain().orElseThrow(), real.settledGain());
    score("lasts at 120 s", found.lasts().orElseThrow(), real.lasts(120));
    score("delays at 120 s", found.delays().orElseThrow(), real.delays(120));
    all.merge(pair.change(), 1, Integer::sum);
    lasting.merge(pair.change(), claims(found.verdict()), Integer::sum);
    delaying.merge(pair.change(), claims(found.delayVerdict()), Integer::sum);
    return found;
  }

  private static int claims(Verdict verdict) {
    return verdict == Verdict.NOT_PROVEN ? 0 : 1;
  }

  private void score(String figure, Belief told, double real) {
    held.merge(figure, told.holds(real) ? 1 : 0, Integer::sum);
    double low = (told.low() + told.middle()) / 2;
    double high = (told.high() + told.middle()) / 2;
    heldByHalf.merge(figure, low <= real && real <= high ? 1 : 0, Integer::sum);
    widths.merge(figure, told.high() - told.low(), Double::sum);
  }

  /** Share of the truths of all figures that their intervals hold. */
  double held() {
    return share(held);
  }

  /** The same if every interval were half as wide. */
  double heldByHalf() {
    return share(heldByHalf);
  }

  private double share(Map<String, Integer> counts) {
    return counts.values().stream().mapToInt(Integer::intValue).sum()
        / (double) (pairs * counts.size());
  }

  /** Share of each figure's truths that are held. */
  Map<String, Double> shares() {
    Map<String, Double> shares = new LinkedHashMap<>();
    held.forEach((figure, count) -> shares.put(figure, count / (double) pairs));
    return shares;
  }

  /** Share of a change's pairs in which a lasting gain was claimed. */
  double lasting(Change change) {
    return lasting.getOrDefault(change, 0) / (double) all.getOrDefault(change, 1);
  }

  /** Share of a change's pairs in which a gain at 60 s was claimed. */
  double delaying(Change change) {
    return delaying.getOrDefault(change, 0) / (double) all.getOrDefault(change, 1);
  }

  /** A table for people. */
  String table() {
    StringBuilder table = new StringBuilder();
    table.append(channel.id()).append(", ").append(pairs).append(" pairs\n");
    held.forEach(
        (figure, count) ->
            table.append(
                String.format(
                    Locale.ROOT,
                    "| %s | %.2f | %.1f |%n",
                    figure,
                    count / (double) pairs,
                    widths.getOrDefault(figure, 0.0) / pairs)));
    all.forEach(
        (change, count) ->
            table.append(
                String.format(
                    Locale.ROOT,
                    "| %s, %d pairs | lasting claimed %.2f | gain at 60 s claimed %.2f |%n",
                    change,
                    count,
                    lasting(change),
                    delaying(change))));
    return table.toString();
  }
}
