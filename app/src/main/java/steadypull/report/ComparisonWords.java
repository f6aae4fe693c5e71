package steadypull.report;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import steadypull.channel.QuantityFormat;
import steadypull.compare.Comparison;
import steadypull.compare.Side;
import steadypull.compare.SideFigures;
import steadypull.thermal.Belief;

/**
 * A comparison in words and figures for one reader: what paper, screen and terminal show alike.
 * Immutable.
 */
public final class ComparisonWords {
  private final Comparison comparison;
  private final ReportWords words;
  private final FigureText figures;
  private final VerdictWords verdict;
  private final FigureRows rows;

  /** Words for one reader. */
  public ComparisonWords(Comparison comparison, Locale locale, QuantityFormat quantities) {
    this.comparison = comparison;
    this.words = new ReportWords(locale);
    this.figures = new FigureText(words, quantities);
    this.verdict = new VerdictWords(words, figures, comparison);
    this.rows = new FigureRows(words, figures, comparison);
  }

  /** What was compared. */
  public Comparison comparison() {
    return comparison;
  }

  /** The channel as a heading. */
  public String channel() {
    return words.title(comparison.channel());
  }

  /** The verdict: one sentence, as strong as its interval. */
  public String claim() {
    return verdict.claim();
  }

  /** Whether not a single temperature can be told: then the caveats say more than dashes. */
  public boolean isUntold() {
    return comparison.before().settles().isEmpty()
        && comparison.after().settles().isEmpty()
        && comparison.at().stream().allMatch(at -> at.before().isEmpty() && at.after().isEmpty());
  }

  /** What proof still asks for; empty if nothing. */
  public Optional<String> missing() {
    return verdict.missing();
  }

  /** The same in few words. */
  public Optional<String> missingShort() {
    return verdict.missingShort();
  }

  /** The verdict and what proof still asks for. */
  public String sentence() {
    return missing().map(asked -> claim() + " " + asked).orElse(claim());
  }

  /** What it means beside the limit; empty if that is not known. */
  public Optional<String> onOneDay() {
    return new DayWords(words, figures, comparison).sentence();
  }

  /** Both sides over time, and settled last. */
  public List<TimeRow> times() {
    return rows.times();
  }

  /** Figures that the runs showed. */
  public List<FigureRow> measured() {
    return rows.measured();
  }

  /** Figures that the identified model says. */
  public List<FigureRow> calculated() {
    return rows.calculated();
  }

  /** Where a side would settle on the day to which both were brought; empty if not known. */
  public Optional<SideDay> day(Side side) {
    SideFigures told = side == Side.BEFORE ? comparison.before() : comparison.after();
    OptionalDouble settles = DayWords.settlesCelsius(comparison, told);
    if (settles.isEmpty()) {
      return Optional.empty();
    }
    QuantityFormat quantities = figures.quantities();
    OptionalDouble limit = comparison.limitCelsius();
    double under = limit.isPresent() ? limit.getAsDouble() - settles.getAsDouble() : 0;
    String time = rows.toLimit(told);
    return Optional.of(
        new SideDay(
            quantities.temperature(settles.getAsDouble()),
            limit.isEmpty()
                ? Optional.empty()
                : Optional.of(
                    words.say(
                        under < 0 ? "trip.isOver" : "trip.isUnder",
                        quantities.temperatureDifference(Math.abs(under)))),
            under < 0,
            time.equals(FigureText.UNKNOWN) ? Optional.empty() : Optional.of(time)));
  }

  /** To what both sides were brought, with runs and days of both. */
  public String conditions() {
    return ConditionWords.sides(this);
  }

  /** How nearly both sides pulled alike; empty if one has no run. */
  public Optional<String> load() {
    return ConditionWords.load(this);
  }

  /** The channel and the vehicle as a title. */
  public String title() {
    return words.say("report.title", channel(), vehicle());
  }

  /** Runs and days of both sides. */
  public String sides() {
    return ConditionWords.runs(this);
  }

  /** How much the loads differ, in one short sentence; empty if one side has no run. */
  public Optional<String> mismatch() {
    return comparison
        .runs()
        .load()
        .map(
            load ->
                words.say(
                    "report.mismatch",
                    figures.quantities().power(Math.abs(load.mismatchKilowatts()))));
  }

  /** The load of both sides; empty if one has no run. */
  public Optional<String> loads() {
    return comparison
        .runs()
        .load()
        .map(
            load ->
                words.say(
                    "picture.loads",
                    figures.quantities().power(load.beforeKilowatts()),
                    figures.quantities().power(load.afterKilowatts())));
  }

  /** A whole number of degrees on the scale of the comparison's temperatures. */
  public String onScale(double degrees) {
    return figures.wholeTemperature(degrees, comparison.isAboveOutside());
  }

  /** The reader's units. */
  public QuantityFormat quantities() {
    return figures.quantities();
  }

  /** The runs that were left out, each with its reason. */
  public List<String> leftOut() {
    return comparison.runs().rejected().stream()
        .map(run -> RunLine.name(run, words) + ", " + words.say("report.rejected", run.reason()))
        .toList();
  }

  /** Name of the vehicle of the runs; empty if there are none. */
  public String vehicle() {
    return comparison.runs().runs().isEmpty()
        ? ""
        : comparison.runs().runs().getLast().vehicle().name();
  }

  /** What the comparison cannot show, each sentence once. */
  public List<String> caveats() {
    return Stream.concat(comparison.caveats().stream(), comparison.runs().caveats().stream())
        .distinct()
        .toList();
  }

  /** Why figures are absent that others have beside them. */
  public List<String> absent() {
    return AbsentFigures.of(comparison, words);
  }

  /** The share of the gain that lasts, in a sentence; empty if it cannot be told. */
  public Optional<String> lasting() {
    return comparison.lasts().map(part -> words.say("report.lasts", part(part)));
  }

  /** The share that only delays; empty if it cannot be told. */
  public Optional<String> delaying() {
    return comparison.delays().map(part -> words.say("report.delays", part(part)));
  }

  /** A change, such as {@code 8.9°}, and its range. */
  public String part(Belief gain) {
    return figures.difference(gain.middle()) + " (" + figures.range(gain) + ")";
  }

  /** The limit on the scale of the comparison's temperatures; empty if there is none. */
  public OptionalDouble limitOnScale() {
    OptionalDouble limit = comparison.limitCelsius();
    OptionalDouble outside = comparison.outsideCelsius();
    if (limit.isEmpty() || (comparison.isAboveOutside() && outside.isEmpty())) {
      return OptionalDouble.empty();
    }
    return OptionalDouble.of(
        limit.getAsDouble() - (comparison.isAboveOutside() ? outside.getAsDouble() : 0));
  }

  /** The limit in words, with where it stands on that scale; empty if there is none. */
  public String limitLabel() {
    OptionalDouble onScale = limitOnScale();
    if (onScale.isEmpty()) {
      return "";
    }
    QuantityFormat quantities = figures.quantities();
    String limit = quantities.temperature(comparison.limitCelsius().getAsDouble());
    return comparison.isAboveOutside()
        ? words.say(
            "picture.limitAbove",
            limit,
            quantities.outsideTemperature(comparison.outsideCelsius().getAsDouble()),
            figures.wholeTemperature(onScale.getAsDouble(), true))
        : words.say("picture.limit", limit);
  }

  /** The range of a change. */
  public String range(Belief gain) {
    return figures.range(gain);
  }

  ReportWords words() {
    return words;
  }

  FigureText figures() {
    return figures;
  }
}
