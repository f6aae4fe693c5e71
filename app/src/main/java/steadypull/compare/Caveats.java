package steadypull.compare;

import java.text.MessageFormat;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.ResourceBundle;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import steadypull.channel.Channel;
import steadypull.channel.Channels;

/**
 * Says what a comparison cannot tell and why, in the reader's language; units are SI. Immutable.
 */
final class Caveats {
  static final String BUNDLE = "steadypull.compare.ComparisonWords";

  /** Below this a viscous fan idles, above it engages (common practice, no source); degC. */
  private static final double FAN_CELSIUS = 97;

  private static final int LAST_SECOND = 120;

  private final ResourceBundle bundle;
  private final Locale locale;

  /** For one reader. */
  Caveats(Locale locale) {
    this.bundle =
        ResourceBundle.getBundle(
            BUNDLE,
            locale,
            ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES));
    this.locale = locale;
  }

  private String say(String key, Object... texts) {
    return new MessageFormat(bundle.getString(key), locale).format(texts);
  }

  private String number(double value, int digits) {
    return String.format(locale, "%." + digits + "f", value);
  }

  /** Nothing tells what heats the store. */
  String noLoad() {
    return say("no-load");
  }

  /** Nothing describes the runs. */
  String noFit() {
    return say("no-fit");
  }

  /** Runs are missing on a side, or on both. */
  String noRuns(Channel channel, List<Run> heard) {
    boolean isBefore = heard.stream().noneMatch(run -> run.side() == Side.BEFORE);
    boolean isAfter = heard.stream().noneMatch(run -> run.side() == Side.AFTER);
    return say("no-runs." + sides(isBefore, isAfter), channel.id());
  }

  private static String sides(boolean isBefore, boolean isAfter) {
    if (isBefore && isAfter) {
      return "both";
    }
    return isBefore ? "before" : isAfter ? "after" : "none";
  }

  /** Runs in which the channel was not heard. */
  Optional<String> unheard(int runs, Channel channel) {
    return runs == 0
        ? Optional.empty()
        : Optional.of(say("unheard", String.valueOf(runs), channel.id()));
  }

  /** How the heat is told, where it is not measured. */
  Optional<String> heat(HeatSource source) {
    return switch (source) {
      case CHARGE_AIR -> Optional.empty();
      case FUEL -> Optional.of(say("heat.fuel"));
      case BOOST, POWER -> Optional.of(say("heat.power"));
    };
  }

  /** Up to where temperatures are measured. */
  Optional<String> calculated(int commonSeconds) {
    return commonSeconds >= LAST_SECOND
        ? Optional.empty()
        : Optional.of(say("calculated", String.valueOf(commonSeconds)));
  }

  /** What no channel tells of the air on a road. */
  Optional<String> wind(List<Run> runs) {
    boolean isOnRoad = runs.stream().anyMatch(run -> run.ground() != Run.Ground.ROLLERS);
    return isOnRoad ? Optional.of(say("wind")) : Optional.empty();
  }

  /** On which sides the engine's fan probably ran. */
  Optional<String> fan(List<Run> runs) {
    Optional<Double> before = hottestEngine(runs, Side.BEFORE);
    Optional<Double> after = hottestEngine(runs, Side.AFTER);
    if (before.isEmpty() || after.isEmpty()) {
      return Optional.empty();
    }
    String ran = sides(before.get() >= FAN_CELSIUS, after.get() >= FAN_CELSIUS);
    return Optional.of(
        say("fan", number(before.get(), 0), number(after.get(), 0), say("fan." + ran)));
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
  Optional<String> regulating(boolean isOpenBefore, boolean isOpenAfter) {
    return isOpenBefore && isOpenAfter
        ? Optional.empty()
        : Optional.of(say("regulating." + sides(!isOpenBefore, !isOpenAfter)));
  }

  /** No limit is known. */
  Optional<String> limit(boolean isKnown) {
    return isKnown ? Optional.empty() : Optional.of(say("no-limit"));
  }

  /** What is missing to a proof. */
  Optional<String> missing(Claim claim, List<Run> runs) {
    if (!claim.isClaimed() || claim.verdict(runs) == Verdict.PROVEN) {
      return Optional.empty();
    }
    Stream<Optional<String>> parts =
        Stream.of(
            unless(Claim.areEnough(runs), "missing.runs"),
            unless(Claim.areApart(runs), "missing.days"),
            unless(claim.isLarge(), "missing.size", number(claim.smallest(), 1)));
    return Optional.of(
        say("missing", parts.flatMap(Optional::stream).collect(Collectors.joining("; "))));
  }

  private Optional<String> unless(boolean isThere, String key, Object... texts) {
    return isThere ? Optional.empty() : Optional.of(say(key, texts));
  }
}
