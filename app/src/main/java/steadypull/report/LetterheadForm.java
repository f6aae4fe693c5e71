package steadypull.report;

/** The head of every form. */
final class LetterheadForm {
  private LetterheadForm() {}

  static Markup of(Letterhead head, ReportWords words) {
    Markup form = new Markup();
    form.open("table", "class", "head").open("tbody").open("tr").open("td");
    if (!head.workshop().isEmpty()) {
      form.with("div", head.workshop(), "class", "workshop");
    }
    head.lines().forEach(line -> form.with("div", line, "class", "soft"));
    if (!head.customer().isEmpty()) {
      form.with("div", words.say("report.for", head.customer()));
    }
    form.close().open("td", "class", "right");
    head.logo()
        .ifPresent(
            logo ->
                form.empty("img", "class", "logo", "src", logo.address(), "alt", head.workshop()));
    form.with("div", head.made().day(), "class", "soft");
    return form.close().close().close().close();
  }
}
