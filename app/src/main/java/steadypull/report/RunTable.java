package steadypull.report;

import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import steadypull.channel.QuantityFormat;
import steadypull.compare.RejectedRun;
import steadypull.compare.Run;
import steadypull.compare.RunStart;

/** Every run with the state in which it began, and those left out with the reason. */
final class RunTable {
  private static final List<String> NUMBERS =
      List.of(
          "column.start",
          "column.outside",
          "column.load",
          "column.speed",
          "column.gear",
          "column.held");

  private final ComparisonWords comparison;
  private final ReportWords words;
  private final QuantityFormat quantities;

  private RunTable(ComparisonWords comparison) {
    this.comparison = comparison;
    this.words = comparison.words();
    this.quantities = comparison.figures().quantities();
  }

  static Markup of(ComparisonWords comparison) {
    RunTable rows = new RunTable(comparison);
    Markup table = new Markup().open("table", "class", "runs").open("thead").open("tr");
    table.with("th", rows.words.say("column.run")).with("th", rows.words.say("column.day"));
    NUMBERS.forEach(key -> table.with("th", rows.words.say(key), "class", "number"));
    table.with("th", rows.words.say("column.state"), "class", "number").close().close();
    table.open("tbody");
    comparison.comparison().runs().runs().forEach(run -> table.add(rows.row(run)));
    comparison.comparison().runs().rejected().forEach(run -> table.add(rows.row(run)));
    return table.close().close();
  }

  private Markup row(Run run) {
    RunStart start = run.start();
    Markup row = new Markup().open("tr");
    row.with("td", RunLine.name(run, words));
    row.with("td", DayText.of(run.day(), words));
    Double began = start.temperaturesCelsius().get(comparison.comparison().channel());
    number(row, began == null ? FigureText.UNKNOWN : quantities.fineTemperature(began));
    number(row, told(start.outsideCelsius(), quantities::outsideTemperature));
    number(row, told(start.powerKilowatts(), quantities::power));
    number(row, told(start.speedKilometresPerHour(), quantities::speed));
    number(
        row,
        start.gear().isPresent() ? Integer.toString(start.gear().getAsInt()) : FigureText.UNKNOWN);
    number(row, words.say("figure.seconds", Integer.toString(run.heldSeconds())));
    number(row, state(start));
    return row.close();
  }

  private Markup row(RejectedRun run) {
    return new Markup()
        .open("tr")
        .with("td", RunLine.name(run, words))
        .with("td", words.say("report.rejected", run.reason()), "colspan", "8", "class", "reason")
        .close();
  }

  private String state(RunStart start) {
    return Stream.of(start.converter(), start.airConditioning(), start.fan(), start.regeneration())
        .map(known -> words.say("known." + known.name().toUpperCase(Locale.ROOT)))
        .collect(Collectors.joining(" / "));
  }

  private String told(OptionalDouble value, java.util.function.DoubleFunction<String> text) {
    return comparison.figures().number(value, text);
  }

  private static void number(Markup row, String text) {
    row.with("td", text, "class", "number");
  }
}
