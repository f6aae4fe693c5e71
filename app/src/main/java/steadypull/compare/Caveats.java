package steadypull.compare;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import steadypull.channel.Channel;
import steadypull.channel.Channels;

/** Sentences on what a comparison cannot tell, and why. Stateless. */
final class Caveats {
  static final String NO_LOAD =
      "Nothing can be told: what heats the store is told by air flow, fuel rate or torque, and"
          + " not every run has one of them. Log one of these channels in every run.";

  static final String NO_FIT =
      "Nothing can be told: no heat capacity and conductance describe these runs together. Look"
          + " at the runs for a sensor that jumps or stands still.";

  /** Below this a viscous fan idles, above it engages (common practice, no source); degC. */
  private static final double FAN_CELSIUS = 97;

  private Caveats() {}

  /** Runs are missing on a side, or on both. */
  static String noRuns(Channel channel, List<Run> heard) {
    String missing =
        Stream.of(Side.values())
            .filter(side -> heard.stream().noneMatch(run -> run.side() == side))
            .map(Caveats::word)
            .collect(Collectors.joining(" and "));
    return "Nothing can be told: no run %s the change has %s over half of its load."
            .formatted(missing, channel.id())
        + " Drive one, or choose another channel.";
  }

  /** Runs in which the channel was not heard. */
  static Optional<String> unheard(int runs, Channel channel) {
    return runs == 0
        ? Optional.empty()
        : Optional.of(
            "%d of the runs have no %s over half of their load and do not count."
                .formatted(runs, channel.id()));
  }

  /** How the heat is told, where it is not measured. */
  static Optional<String> heat(HeatSource source) {
    return switch (source) {
      case CHARGE_AIR -> Optional.empty();
      case FUEL ->
          Optional.of(
              "The coolant's heat is taken for a fifth of the fuel's: J/K, W/K and W are right"
                  + " within a third, their change is not touched by it.");
      case BOOST, POWER ->
          Optional.of(
              "The heat that comes in here is not measured: it is taken to go with the power, so"
                  + " that gains can be told, but no J/K, W/K or W.");
    };
  }

  /** Up to where temperatures are measured. */
  static Optional<String> calculated(int commonSeconds) {
    return commonSeconds >= 120
        ? Optional.empty()
        : Optional.of(
            "All runs held their load for %d s; what is told later is calculated."
                .formatted(commonSeconds));
  }

  /** What no channel tells of the air on a road. */
  static Optional<String> wind(List<Run> runs) {
    boolean isOnRoad = runs.stream().anyMatch(run -> run.ground() != Run.Ground.ROLLERS);
    return isOnRoad
        ? Optional.of(
            "Wind on the road is not measured; the intervals allow for 2.5 m/s from day to day.")
        : Optional.empty();
  }

  /** On which sides the engine's fan probably ran. */
  static Optional<String> fan(List<Run> runs) {
    Optional<Double> before = hottestEngine(runs, Side.BEFORE);
    Optional<Double> after = hottestEngine(runs, Side.AFTER);
    if (before.isEmpty() || after.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        String.format(
            Locale.ROOT,
            "Engine coolant rose to %.0f degC before and %.0f degC after: the engine's fan %s.",
            before.get(),
            after.get(),
            fanWords(before.get() >= FAN_CELSIUS, after.get() >= FAN_CELSIUS)));
  }

  private static String fanWords(boolean isBefore, boolean isAfter) {
    if (isBefore && isAfter) {
      return "probably ran on both sides";
    }
    if (isBefore || isAfter) {
      return "probably ran %s only, which counts as cooling there"
          .formatted(word(isBefore ? Side.BEFORE : Side.AFTER));
    }
    return "probably idled on both sides";
  }

  private static Optional<Double> hottestEngine(List<Run> runs, Side side) {
    return runs.stream()
        .filter(run -> run.side() == side)
        .filter(run -> Columns.isHeard(run, Channels.ENGINE_COOLANT_TEMP))
        .map(
            run ->
                Columns.mean(
                    run.series()
                        .span(
                            Channels.ENGINE_COOLANT_TEMP,
                            Math.max(0, run.loadSeconds() - 10),
                            run.loadSeconds())))
        .filter(celsius -> !celsius.isNaN())
        .max(Double::compare);
  }

  /** The thermostat still held the temperature. */
  static Optional<String> regulating(boolean isOpenBefore, boolean isOpenAfter) {
    if (isOpenBefore && isOpenAfter) {
      return Optional.empty();
    }
    String where =
        isOpenBefore ? "after the change" : isOpenAfter ? "before the change" : "on both sides";
    return Optional.of(
        "The thermostat still regulated %s: a bigger radiator cannot help meanwhile, so that no"
                .formatted(where)
            + " lasting gain is claimed. Pull harder or longer, until it is fully open.");
  }

  /** What is missing to a proof. */
  static Optional<String> missing(Claim claim, List<Run> runs) {
    if (!claim.isClaimed() || claim.verdict(runs) == Verdict.PROVEN) {
      return Optional.empty();
    }
    String runsMissing = Claim.areEnough(runs) ? "" : "three runs a side";
    String daysMissing =
        Claim.areApart(runs) ? "" : "two separate days a side, or before-after-before";
    String sizeMissing =
        claim.isLarge()
            ? ""
            : String.format(
                Locale.ROOT,
                "runs that agree better (these could show %.1f degC)",
                claim.smallest());
    return Optional.of(
        "Missing to a proof: %s."
            .formatted(
                Stream.of(runsMissing, daysMissing, sizeMissing)
                    .filter(part -> !part.isEmpty())
                    .collect(Collectors.joining("; "))));
  }

  private static String word(Side side) {
    return switch (side) {
      case BEFORE -> "before";
      case AFTER -> "after";
    };
  }
}
