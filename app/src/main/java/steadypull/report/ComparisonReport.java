package steadypull.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import steadypull.channel.QuantityFormat;
import steadypull.compare.Asked;
import steadypull.compare.Comparison;
import steadypull.compare.Job;
import steadypull.compare.Run;
import steadypull.compare.Side;

/**
 * The form for the customer of what a change of the cooling did: the verdict first, what was
 * measured before what was calculated, every run, how it was done and what it does not say. One
 * use.
 */
public final class ComparisonReport {
  private final ComparisonWords comparison;
  private final ReportWords words;
  private final Letterhead head;
  private final String vehicle;

  private ComparisonReport(ComparisonWords comparison, Letterhead head, String vehicle) {
    this.comparison = comparison;
    this.words = comparison.words();
    this.head = head;
    this.vehicle = vehicle;
  }

  /**
   * The page.
   *
   * @param vehicle its name
   */
  public static ReportPage of(
      Comparison comparison,
      String vehicle,
      Letterhead head,
      Locale locale,
      QuantityFormat quantities) {
    ComparisonWords words = new ComparisonWords(comparison, locale, quantities);
    return new ComparisonReport(words, head, vehicle).page();
  }

  private ReportPage page() {
    String title = words.say("report.title", comparison.channel(), vehicle);
    Markup body = new Markup();
    body.add(LetterheadForm.of(head, words)).with("h1", title);
    job().ifPresent(name -> body.with("p", words.say("report.job", name), "class", "soft"));
    body.add(verdict());
    body.with("p", comparison.conditions(), "class", "soft");
    comparison.load().ifPresent(text -> body.with("p", text, "class", "soft"));
    if (!comparison.isUntold()) {
      figures(body);
    }
    body.with("h2", words.say("report.runs")).add(RunTable.of(comparison));
    body.add(list("report.limits", limits()));
    body.add(list("report.notes", notes()));
    body.add(list("report.method", method()));
    body.add(list("report.cautions", sentences("report.caution.", 2)));
    body.with(
        "div", words.say("report.made", head.made().day(), head.made().version()), "class", "foot");
    return ReportPage.of(words, head, title, words.say("report.subject"), body);
  }

  private void figures(Markup body) {
    body.add(ComparisonPicture.of(comparison));
    body.with("p", words.say("picture.note"), "class", "soft");
    body.add(FigureTables.times(comparison));
    body.add(GainSplit.of(comparison));
    body.with("h2", words.say("report.measured"));
    body.add(FigureTables.of(comparison.measured(), words));
    body.with("h2", words.say("report.calculated"));
    body.add(FigureTables.of(comparison.calculated(), words));
    body.with("p", words.say("report.calculatedNote"), "class", "soft");
  }

  private Optional<String> job() {
    String name = comparison.comparison().runs().job().name();
    return name.isEmpty() ? Optional.empty() : Optional.of(name);
  }

  private Markup verdict() {
    Markup box = new Markup().open("div", "class", "verdict");
    box.with("p", comparison.claim(), "class", "claim");
    comparison.onOneDay().ifPresent(day -> box.with("p", day, "class", "more"));
    comparison.missing().ifPresent(asked -> box.with("p", asked, "class", "more"));
    return box.close();
  }

  private List<String> limits() {
    List<String> limits = new ArrayList<>();
    boolean isOnRollers =
        comparison.comparison().runs().runs().stream()
            .anyMatch(run -> run.ground() != Run.Ground.ROAD);
    if (isOnRollers) {
      limits.add(words.say("report.limit.rollers"));
    }
    limits.add(words.say("report.limit.vehicle"));
    comparison
        .comparison()
        .smallestDetectable()
        .ifPresent(
            least ->
                limits.add(words.say("report.detectable", comparison.figures().difference(least))));
    limits.addAll(comparison.caveats());
    return limits.stream().distinct().toList();
  }

  private List<String> notes() {
    Job job = comparison.comparison().runs().job();
    List<String> notes = new ArrayList<>();
    for (Asked asked : Asked.values()) {
      String told = told(job.answer(asked, Side.BEFORE), job.answer(asked, Side.AFTER));
      if (!told.isEmpty()) {
        notes.add(words.say("asked." + asked.id()) + ": " + told);
      }
    }
    return notes;
  }

  private String told(Optional<String> before, Optional<String> after) {
    if (before.equals(after)) {
      return before.orElse("");
    }
    return "%s: %s; %s: %s"
        .formatted(
            words.say("column.before"),
            before.orElse(FigureText.UNKNOWN),
            words.say("column.after"),
            after.orElse(FigureText.UNKNOWN));
  }

  private List<String> method() {
    return sentences("report.method.", 4);
  }

  private List<String> sentences(String key, int count) {
    List<String> sentences = new ArrayList<>();
    for (int i = 1; i <= count; i++) {
      sentences.add(words.say(key + i));
    }
    return sentences;
  }

  private Markup list(String key, List<String> items) {
    Markup list = new Markup();
    if (items.isEmpty()) {
      return list;
    }
    list.with("h2", words.say(key)).open("ul");
    items.forEach(item -> list.with("li", item));
    return list.close();
  }
}
