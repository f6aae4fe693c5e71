package steadypull.report;

import java.util.List;

/** Tables of figures. */
final class FigureTables {
  private static final String NUMBER = "number";

  private FigureTables() {}

  /** Both sides over time. */
  static Markup times(ComparisonWords comparison) {
    ReportWords words = comparison.words();
    Markup table = new Markup().open("table");
    table.open("thead").open("tr").with("th", words.say("column.time"));
    List.of("column.before", "column.after", "column.gain", "column.range")
        .forEach(key -> table.with("th", words.say(key), "class", NUMBER));
    table.with("th", "", "class", NUMBER).close().close().open("tbody");
    for (TimeRow row : comparison.times()) {
      table
          .open("tr")
          .with("td", row.time(), "class", "strong")
          .with("td", row.before(), "class", NUMBER)
          .with("td", row.after(), "class", NUMBER)
          .with("td", row.gain(), "class", "number strong")
          .with("td", row.range(), "class", NUMBER)
          .with(
              "td",
              words.say(row.isMeasured() ? "how.measured" : "how.calculated"),
              "class",
              "number soft")
          .close();
    }
    return table.close().close();
  }

  /** Figures of both sides. */
  static Markup of(List<FigureRow> rows, ReportWords words) {
    Markup table = new Markup();
    if (rows.isEmpty()) {
      return table.with("p", words.say("figure.none"));
    }
    table.open("table", "class", "figures").open("thead").open("tr").with("th", "");
    table.with("th", words.say("column.before"), "class", NUMBER);
    table.with("th", words.say("column.after"), "class", NUMBER).close().close().open("tbody");
    for (FigureRow row : rows) {
      table
          .open("tr")
          .with("td", row.label())
          .with("td", row.before(), "class", NUMBER)
          .with("td", row.after(), "class", NUMBER)
          .close();
    }
    return table.close().close();
  }
}
