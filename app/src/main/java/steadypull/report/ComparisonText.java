package steadypull.report;

import java.util.List;
import steadypull.compare.RejectedRun;
import steadypull.compare.Run;

/** A comparison for a terminal: the verdict first, as on paper. */
public final class ComparisonText {
  private static final String TIMES = "  %-12s %10s %10s %16s   %-30s %s";
  private static final String FIGURES = "  %-36s %-30s %s";

  private final ComparisonWords comparison;
  private final ReportWords words;
  private final StringBuilder text = new StringBuilder();

  private ComparisonText(ComparisonWords comparison) {
    this.comparison = comparison;
    this.words = comparison.words();
  }

  /** Lines, each with its end. */
  public static String of(ComparisonWords comparison) {
    ComparisonText text = new ComparisonText(comparison);
    text.verdict();
    if (!comparison.isUntold()) {
      text.times();
      text.figures("report.measured", comparison.measured());
      text.figures("report.calculated", comparison.calculated());
    }
    text.runs();
    text.list("report.limits", comparison.caveats());
    return text.text.toString();
  }

  private void verdict() {
    line(comparison.claim());
    comparison.onOneDay().ifPresent(this::line);
    comparison.missing().ifPresent(this::line);
    line("");
    line(comparison.conditions());
    comparison.load().ifPresent(this::line);
  }

  private void times() {
    heading(
        comparison.channel()
            + (comparison.comparison().isAboveOutside() ? ", " + words.say("picture.above") : ""));
    line(
        TIMES.formatted(
            "",
            words.say("column.before"),
            words.say("column.after"),
            words.say("column.gain"),
            words.say("column.range"),
            ""));
    for (TimeRow row : comparison.times()) {
      line(
          TIMES.formatted(
              row.time(),
              row.before(),
              row.after(),
              row.gain(),
              row.range(),
              words.say(row.isMeasured() ? "how.measured" : "how.calculated")));
    }
    comparison.lasting().ifPresent(part -> line("  " + part));
    comparison.delaying().ifPresent(part -> line("  " + part));
  }

  private void figures(String key, List<FigureRow> rows) {
    if (!rows.isEmpty()) {
      heading(words.say(key));
      line(FIGURES.formatted("", words.say("column.before"), words.say("column.after")));
      rows.forEach(row -> line(FIGURES.formatted(row.label(), row.before(), row.after())));
    }
  }

  private void runs() {
    heading(words.say("report.runs"));
    for (Run run : comparison.comparison().runs().runs()) {
      line("  " + RunLine.name(run, words) + ", " + RunLine.of(run, comparison));
    }
    for (RejectedRun run : comparison.comparison().runs().rejected()) {
      line("  " + RunLine.name(run, words) + ", " + words.say("report.rejected", run.reason()));
    }
  }

  private void list(String key, List<String> items) {
    heading(words.say(key));
    items.forEach(item -> line("  - " + item));
  }

  private void heading(String title) {
    line("");
    line(title);
  }

  private void line(String line) {
    text.append(line.stripTrailing()).append('\n');
  }
}
