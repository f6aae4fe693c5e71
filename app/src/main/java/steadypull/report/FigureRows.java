package steadypull.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import steadypull.channel.QuantityFormat;
import steadypull.compare.Comparison;
import steadypull.compare.GainAt;
import steadypull.compare.SideFigures;
import steadypull.thermal.Belief;

/** The figures of a comparison as rows; those of which nothing is known are absent. Immutable. */
final class FigureRows {
  private static final double SECONDS_PER_MINUTE = 60;

  /** What is printed has three decimals. */
  private static final double LEAST_KILOWATT_HOURS = 0.0005;

  private static final String PER_MINUTE = "/min";

  private final ReportWords words;
  private final FigureText figures;
  private final Comparison comparison;

  FigureRows(ReportWords words, FigureText figures, Comparison comparison) {
    this.words = words;
    this.figures = figures;
    this.comparison = comparison;
  }

  /** Both sides over time, and settled last. */
  List<TimeRow> times() {
    List<TimeRow> rows = new ArrayList<>();
    for (GainAt at : comparison.at()) {
      rows.add(
          row(
              words.say("figure.seconds", Integer.toString(at.seconds())),
              at.before(),
              at.after(),
              at.gain(),
              at.isMeasured()));
    }
    rows.add(
        row(
            words.say("figure.settled"),
            middle(comparison.before().settles()),
            middle(comparison.after().settles()),
            comparison.settledGain(),
            false));
    return rows;
  }

  private TimeRow row(
      String time,
      OptionalDouble before,
      OptionalDouble after,
      Optional<Belief> gain,
      boolean isMeasured) {
    return new TimeRow(
        time,
        figures.number(before, this::temperature),
        figures.number(after, this::temperature),
        gain.map(this::gain).orElse(FigureText.UNKNOWN),
        gain.map(figures::range).orElse(""),
        isMeasured);
  }

  /** Under "cooler by" only what is hotter needs a word. */
  private String gain(Belief gain) {
    return gain.middle() < 0 ? figures.change(gain.middle()) : figures.difference(gain.middle());
  }

  private String temperature(double degrees) {
    return figures.temperature(degrees, comparison.isAboveOutside());
  }

  private static OptionalDouble middle(Optional<Belief> belief) {
    return belief.stream().mapToDouble(Belief::middle).findFirst();
  }

  /** What the runs showed. */
  List<FigureRow> measured() {
    return told(
        row(
            "figure.rate",
            side ->
                figures.belief(
                    side.kelvinPerSecond(),
                    rate -> figures.difference(rate * SECONDS_PER_MINUTE),
                    PER_MINUTE)),
        row("figure.derate", side -> figures.number(side.secondsToDerate(), FigureText::minutes)),
        row("figure.lost", side -> figures.number(side.lostKilowattHours(), this::lost)),
        row(
            "figure.recovery",
            side ->
                figures.belief(side.recoveryKelvinPerMinute(), figures::difference, PER_MINUTE)));
  }

  /** What the identified model says of both sides at the common conditions. */
  List<FigureRow> calculated() {
    QuantityFormat quantities = figures.quantities();
    return told(
        row("figure.settles", side -> figures.belief(side.settles(), this::temperature, "")),
        row("figure.limit", this::toLimit),
        row(
            "figure.rejected",
            side -> figures.belief(side.rejectedWatts(), watts -> decimal(watts / 1000, 1), " kW")),
        row(
            "figure.effectiveness",
            side -> figures.belief(side.effectiveness(), share -> decimal(share * 100, 0), " %")),
        row(
            "figure.conductance",
            side -> figures.belief(side.wattsPerKelvin(), watts -> decimal(watts, 0), " W/K")),
        row(
            "figure.capacity",
            side ->
                figures.belief(
                    side.joulesPerKelvin(), joules -> decimal(joules / 1000, 1), " kJ/K")),
        row(
            "figure.sustainable",
            side ->
                figures.belief(
                    side.sustainableKilowatts(),
                    quantities::powerDigits,
                    " " + quantities.powerUnit())),
        row(
            "figure.hottest",
            side ->
                figures.belief(side.hottestOutsideCelsius(), quantities::outsideTemperature, "")));
  }

  private String lost(double kilowattHours) {
    return kilowattHours < LEAST_KILOWATT_HOURS
        ? words.say("figure.none")
        : decimal(kilowattHours, 3) + " kWh";
  }

  /** As {@code m:ss}, that it never comes, or a dash. */
  String toLimit(SideFigures side) {
    if (side.secondsToLimit().isPresent()) {
      return FigureText.minutes(side.secondsToLimit().getAsDouble());
    }
    OptionalDouble settles = DayWords.settlesCelsius(comparison, side);
    boolean isNever =
        settles.isPresent()
            && comparison.limitCelsius().isPresent()
            && settles.getAsDouble() < comparison.limitCelsius().getAsDouble();
    return isNever ? words.say("figure.never") : FigureText.UNKNOWN;
  }

  private String decimal(double value, int decimals) {
    return figures.quantities().decimal(value, decimals);
  }

  private FigureRow row(String key, Function<SideFigures, String> text) {
    return new FigureRow(
        words.say(key), text.apply(comparison.before()), text.apply(comparison.after()));
  }

  private static List<FigureRow> told(FigureRow... rows) {
    return List.of(rows).stream().filter(FigureRow::tells).toList();
  }
}
