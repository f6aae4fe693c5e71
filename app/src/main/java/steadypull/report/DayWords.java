package steadypull.report;

import java.util.Optional;
import java.util.OptionalDouble;
import steadypull.compare.Comparison;
import steadypull.compare.SideFigures;

/** What the change means on one day: both sides beside the limit. Immutable. */
final class DayWords {
  private final ReportWords words;
  private final FigureText figures;
  private final Comparison comparison;

  DayWords(ReportWords words, FigureText figures, Comparison comparison) {
    this.words = words;
    this.figures = figures;
    this.comparison = comparison;
  }

  /** The sentence; empty if limit, outside temperature or one of the sides is not known. */
  Optional<String> sentence() {
    OptionalDouble outside = comparison.outsideCelsius();
    Optional<String> before = side("day.before.", comparison.before());
    Optional<String> after = side("day.after.", comparison.after());
    if (outside.isEmpty() || before.isEmpty() || after.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        words.say(
            "day",
            figures.quantities().outsideTemperature(outside.getAsDouble()),
            words.name(comparison.channel()),
            before.get(),
            after.get()));
  }

  private Optional<String> side(String key, SideFigures side) {
    if (comparison.limitCelsius().isEmpty()) {
      return Optional.empty();
    }
    String limit = figures.quantities().temperature(comparison.limitCelsius().getAsDouble());
    if (side.secondsToLimit().isPresent()) {
      return Optional.of(
          words.say(
              key + "reaches", limit, FigureText.minutes(side.secondsToLimit().getAsDouble())));
    }
    OptionalDouble under = kelvinUnderLimit(side);
    return under.isEmpty()
        ? Optional.empty()
        : Optional.of(
            words.say(
                key + (under.getAsDouble() < 0 ? "over" : "under"),
                limit,
                figures.quantities().temperatureDifference(Math.abs(under.getAsDouble()))));
  }

  private OptionalDouble kelvinUnderLimit(SideFigures side) {
    OptionalDouble settles = settlesCelsius(comparison, side);
    return settles.isPresent()
        ? OptionalDouble.of(comparison.limitCelsius().getAsDouble() - settles.getAsDouble())
        : OptionalDouble.empty();
  }

  /** Where a side settles in the conditions of the comparison, degC; empty if not known. */
  static OptionalDouble settlesCelsius(Comparison comparison, SideFigures side) {
    if (side.settles().isEmpty()
        || (comparison.isAboveOutside() && comparison.outsideCelsius().isEmpty())) {
      return OptionalDouble.empty();
    }
    double above = comparison.isAboveOutside() ? comparison.outsideCelsius().getAsDouble() : 0;
    return OptionalDouble.of(side.settles().get().middle() + above);
  }
}
