package steadypull.cli;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import steadypull.compare.Comparison;
import steadypull.compare.GainAt;
import steadypull.compare.RejectedRun;
import steadypull.compare.Run;
import steadypull.compare.Side;
import steadypull.compare.Verdict;
import steadypull.report.ComparisonWords;
import steadypull.thermal.Belief;

/**
 * A comparison for machines. Keys are stable; more may be added. What cannot be told has no key,
 * and a caveat says why.
 */
final class CompareJson {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final int DEGREES = 2;

  private final Comparison found;
  private final ObjectNode node = JSON.createObjectNode();

  private CompareJson(Comparison found) {
    this.found = found;
  }

  static String of(ComparisonWords words) {
    CompareJson json = new CompareJson(words.comparison());
    json.verdict(words);
    json.times();
    json.figures();
    json.conditions();
    ArrayNode caveats = json.node.putArray("caveats");
    words.caveats().forEach(caveats::add);
    words.absent().forEach(caveats::add);
    json.runs();
    return json.node.toString();
  }

  private void verdict(ComparisonWords words) {
    node.put("channel", found.channel().id());
    node.put("verdict", found.verdict().id());
    node.put("delay_verdict", found.delayVerdict().id());
    node.put("sentence", words.sentence());
    put("settled_gain_degC", found.settledGain(), DEGREES);
    put("smallest_detectable_degC", found.smallestDetectable(), DEGREES);
    put("equivalent_within_degC", found.equivalentWithin(), DEGREES);
    node.put("direction", direction());
  }

  /** Of the settled gain; none where no change is claimed. */
  private String direction() {
    if (found.verdict() == Verdict.NOT_PROVEN || found.settledGain().isEmpty()) {
      return "none";
    }
    return found.settledGain().get().middle() > 0 ? "cooler" : "hotter";
  }

  private void times() {
    ArrayNode times = node.putArray("at");
    for (GainAt at : found.at()) {
      ObjectNode time = times.addObject();
      time.put("s", at.seconds());
      put(time, "before_degC", at.before(), DEGREES);
      put(time, "after_degC", at.after(), DEGREES);
      put(time, "gain_degC", at.gain(), DEGREES);
      time.put("measured", at.isMeasured());
    }
    put("lasts_degC", found.lasts(), DEGREES);
    put("delays_degC", found.delays(), DEGREES);
  }

  private void figures() {
    put("heat_capacity_before_J_per_K", found.before().joulesPerKelvin(), 0);
    put("heat_capacity_after_J_per_K", found.after().joulesPerKelvin(), 0);
    put("conductance_before_W_per_K", found.before().wattsPerKelvin(), 1);
    put("conductance_after_W_per_K", found.after().wattsPerKelvin(), 1);
    put("time_to_limit_before_s", found.before().secondsToLimit(), 1);
    put("time_to_limit_after_s", found.after().secondsToLimit(), 1);
  }

  private void conditions() {
    node.put("above_outside", found.isAboveOutside());
    put("outside_degC", found.outsideCelsius(), DEGREES);
    put("power_kW", found.powerKilowatts(), 1);
    put("limit_degC", found.limitCelsius(), DEGREES);
    put("settles_before_degC", found.before().settles(), DEGREES);
    put("settles_after_degC", found.after().settles(), DEGREES);
    put("rejected_before_W", found.before().rejectedWatts(), 0);
    put("rejected_after_W", found.after().rejectedWatts(), 0);
    put("effectiveness_before", found.before().effectiveness(), 3);
    put("effectiveness_after", found.after().effectiveness(), 3);
    put("time_to_derate_before_s", found.before().secondsToDerate(), 1);
    put("time_to_derate_after_s", found.after().secondsToDerate(), 1);
    put("lost_before_kWh", found.before().lostKilowattHours(), 4);
    put("lost_after_kWh", found.after().lostKilowattHours(), 4);
    put("sustainable_power_before_kW", found.before().sustainableKilowatts(), 1);
    put("sustainable_power_after_kW", found.after().sustainableKilowatts(), 1);
    put("hottest_outside_before_degC", found.before().hottestOutsideCelsius(), DEGREES);
    put("hottest_outside_after_degC", found.after().hottestOutsideCelsius(), DEGREES);
  }

  private void runs() {
    ArrayNode runs = node.putArray("runs");
    for (Run run : found.runs().runs()) {
      ObjectNode each = runs.addObject();
      name(each, run.source(), run.onsetSeconds(), run.side());
      run.day().ifPresent(day -> each.put("day", day.toString()));
      each.put("held_s", run.heldSeconds());
      put(each, "power_kW", run.start().powerKilowatts(), 1);
      put(each, "outside_degC", run.start().outsideCelsius(), DEGREES);
    }
    ArrayNode rejected = node.putArray("rejected");
    for (RejectedRun run : found.runs().rejected()) {
      ObjectNode each = rejected.addObject();
      name(each, run.source(), run.onsetSeconds(), run.side());
      each.put("reason", run.reason());
    }
  }

  private static void name(ObjectNode node, String source, double onsetSeconds, Side side) {
    node.put("trip", source);
    node.put("side", side.name().toLowerCase(Locale.ROOT));
    node.put("onset_s", rounded(onsetSeconds, 1));
  }

  private void put(String key, Optional<Belief> belief, int decimals) {
    put(node, key, belief, decimals);
  }

  private void put(String key, OptionalDouble value, int decimals) {
    put(node, key, value, decimals);
  }

  private static void put(ObjectNode node, String key, Optional<Belief> belief, int decimals) {
    belief.ifPresent(
        each ->
            node.putObject(key)
                .put("p05", rounded(each.low(), decimals))
                .put("p50", rounded(each.middle(), decimals))
                .put("p95", rounded(each.high(), decimals)));
  }

  private static void put(ObjectNode node, String key, OptionalDouble value, int decimals) {
    value.ifPresent(each -> node.put(key, rounded(each, decimals)));
  }

  private static double rounded(double value, int decimals) {
    double scale = Math.pow(10, decimals);
    return Math.round(value * scale) / scale;
  }
}
