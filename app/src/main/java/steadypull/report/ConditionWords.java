package steadypull.report;

import java.util.List;
import java.util.Optional;
import steadypull.channel.QuantityFormat;
import steadypull.compare.Comparison;
import steadypull.compare.Run;
import steadypull.compare.Side;

/** To what both sides were brought, and how nearly they pulled alike. */
final class ConditionWords {
  private ConditionWords() {}

  /** Common conditions, and runs and days of both sides. */
  static String sides(ComparisonWords comparison) {
    Comparison found = comparison.comparison();
    ReportWords words = comparison.words();
    if (found.outsideCelsius().isEmpty() || found.powerKilowatts().isEmpty()) {
      return runs(comparison);
    }
    QuantityFormat quantities = comparison.figures().quantities();
    return words.say(
        "report.conditions",
        quantities.outsideTemperature(found.outsideCelsius().getAsDouble()),
        quantities.power(found.powerKilowatts().getAsDouble()),
        side(comparison, Side.BEFORE),
        side(comparison, Side.AFTER));
  }

  /** Runs and days of both sides. */
  static String runs(ComparisonWords comparison) {
    return comparison
        .words()
        .say(
            "report.conditionsUnknown",
            side(comparison, Side.BEFORE),
            side(comparison, Side.AFTER));
  }

  private static String side(ComparisonWords comparison, Side side) {
    ReportWords words = comparison.words();
    List<Run> runs = comparison.comparison().runs().of(side);
    return switch (runs.size()) {
      case 0 -> words.say("report.sideNone");
      case 1 -> words.say("report.sideOne", DayText.of(runs, words));
      default -> words.say("report.side", Integer.toString(runs.size()), DayText.of(runs, words));
    };
  }

  /** The mismatch of the loads; empty if one side has no run. */
  static Optional<String> load(ComparisonWords comparison) {
    QuantityFormat quantities = comparison.figures().quantities();
    return comparison
        .comparison()
        .runs()
        .load()
        .map(
            load ->
                comparison
                    .words()
                    .say(
                        "report.load",
                        quantities.power(Math.abs(load.mismatchKilowatts())),
                        quantities.power(load.beforeKilowatts()),
                        quantities.power(load.afterKilowatts()),
                        Integer.toString(load.windowSeconds())));
  }
}
