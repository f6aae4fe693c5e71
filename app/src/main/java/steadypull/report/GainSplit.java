package steadypull.report;

import java.util.Optional;
import steadypull.compare.Comparison;
import steadypull.thermal.Belief;

/** What of the gain lasts and what only delays, with the fills that the picture has for them. */
final class GainSplit {
  private static final double SWATCH_WIDTH = 22;
  private static final double SWATCH_HEIGHT = 12;

  private GainSplit() {}

  /** The line; empty if the split cannot be told. */
  static Markup of(ComparisonWords comparison) {
    Comparison found = comparison.comparison();
    Markup line = new Markup();
    if (found.at().isEmpty() || (found.lasts().isEmpty() && found.delays().isEmpty())) {
      return line;
    }
    ReportWords words = comparison.words();
    String seconds = Integer.toString(found.at().getLast().seconds());
    line.with("h2", words.say("report.gain"));
    line.open("table", "class", "split").open("tbody").open("tr");
    line.with("td", words.say("report.gainAt", seconds));
    part(line, comparison, "report.lasts", found.lasts(), false);
    part(line, comparison, "report.delays", found.delays(), true);
    return line.close().close().close();
  }

  private static void part(
      Markup line,
      ComparisonWords comparison,
      String key,
      Optional<Belief> part,
      boolean isHatched) {
    part.ifPresent(
        belief -> {
          String text = comparison.words().say(key, comparison.part(belief));
          line.open("td", "class", "swatch").add(swatch(text, isHatched)).close();
          line.with("td", text);
        });
  }

  private static Markup swatch(String title, boolean isHatched) {
    Drawing swatch = new Drawing(SWATCH_WIDTH, SWATCH_HEIGHT, title);
    if (isHatched) {
      swatch.hatchedRectangle(PicturePlan.INK, 0.5, 0.5, SWATCH_WIDTH - 1, SWATCH_HEIGHT - 1);
    } else {
      swatch.rectangle(PicturePlan.LASTS, 0.5, 0.5, SWATCH_WIDTH - 1, SWATCH_HEIGHT - 1);
    }
    swatch.frame(PicturePlan.INK, 1, 0.5, 0.5, SWATCH_WIDTH - 1, SWATCH_HEIGHT - 1);
    return swatch.markup();
  }
}
