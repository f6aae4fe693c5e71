package steadypull.ui;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import javafx.scene.Node;
import steadypull.compare.Comparison;
import steadypull.compare.GainAt;
import steadypull.report.ComparisonScales;
import steadypull.report.ComparisonWords;
import steadypull.report.PictureScale;

/** The words of the lanes. One use. */
final class CompareLabels {
  private static final double NAME_ROOM = 118;
  private static final double FIRST_LINE = 26;
  private static final double SECOND_LINE = 50;
  private static final double MIDDLE = 6;
  private static final double ABOVE = 16;
  private static final double BELOW = 30;
  private static final double LETTERS = 18;
  private static final double GAIN_NAME = 20;
  private static final double GAIN_CLEAR = 28;
  private static final double LIMIT_LEFT = 170;
  private static final double LEAST_GAP = 40;
  private static final double CLEAR_OF_NAMES = 64;
  private static final double CEILING = 30;

  private final Words words;
  private final ComparisonWords comparison;
  private final Comparison found;
  private final int seconds;
  private final List<Node> rows = new ArrayList<>();

  CompareLabels(Words words, ComparisonWords comparison) {
    this.words = words;
    this.comparison = comparison;
    this.found = comparison.comparison();
    this.seconds = ComparisonScales.seconds(found);
  }

  List<Node> rows() {
    load();
    temperatures();
    gain();
    times();
    return rows;
  }

  private TextRow left(String text, double x, double baseline, String... styles) {
    TextRow row = Parked.line(text, x, baseline, styles);
    rows.add(row);
    return row;
  }

  private void at(TextRow.Anchor anchor, String text, double x, double baseline, String... styles) {
    var words = TextRow.text(styles);
    words.setText(text);
    rows.add(new TextRow(anchor).add(words, 0).at(x, baseline));
  }

  private void load() {
    left(words.say("compare.load"), 28, CompareGeometry.LOAD_TOP + FIRST_LINE + 4, "bold", "small")
        .within(NAME_ROOM);
    comparison
        .loads()
        .ifPresent(
            loads ->
                at(
                    TextRow.Anchor.RIGHT,
                    loads,
                    CompareGeometry.PLOT_RIGHT - 12,
                    CompareGeometry.LOAD_TOP + CompareGeometry.LOAD_HEIGHT - 8,
                    "small",
                    "second"));
  }

  private void temperatures() {
    double top = CompareGeometry.TEMPERATURE_TOP;
    left(words.name(found.channel()), 28, top + FIRST_LINE, "bold").within(NAME_ROOM);
    left(
            found.isAboveOutside()
                ? words.say("compare.above")
                : comparison.quantities().outsideTemperatureUnit(),
            28,
            top + SECOND_LINE,
            "small",
            "second")
        .within(NAME_ROOM);
    PictureScale scale = ComparePainter.temperatureScale(comparison);
    for (double value : scale.lines()) {
      if (scale.y(value) > top + CLEAR_OF_NAMES
          && scale.y(value) < top + CompareGeometry.TEMPERATURE_HEIGHT - 8) {
        at(
            TextRow.Anchor.RIGHT,
            comparison.onScale(value),
            CompareGeometry.VALUE_RIGHT,
            scale.y(value) + MIDDLE,
            "axis");
      }
    }
    double limit = limit(scale);
    names(scale, limit);
  }

  /** Writes the limit; returns the baseline under which others may stand. */
  private double limit(PictureScale scale) {
    OptionalDouble limit = comparison.limitOnScale();
    if (limit.isEmpty() || limit.getAsDouble() >= scale.high()) {
      return CompareGeometry.TEMPERATURE_TOP;
    }
    double y = scale.y(limit.getAsDouble());
    boolean hasRoom = y - CompareGeometry.TEMPERATURE_TOP > CEILING;
    double baseline = hasRoom ? y - 9 : y + 21;
    left(comparison.limitLabel(), LIMIT_LEFT, baseline, "small", "backed");
    return baseline + 6;
  }

  /** The hotter side is named over its line, the cooler one under its own. */
  private void names(PictureScale scale, double least) {
    double[] before = ComparisonScales.shown(found.beforeCourse().middle(), found);
    double[] after = ComparisonScales.shown(found.afterCourse().middle(), found);
    int length = Math.min(before.length, after.length);
    for (double share : new double[] {0.67, 0.5, 0.33, 0.2}) {
      int at = (int) (share * length);
      if (at < length && !Double.isNaN(before[at]) && !Double.isNaN(after[at])) {
        boolean isCooler = after[at] <= before[at];
        double highest = scale.y(Math.max(before[at], after[at])) - ABOVE - LETTERS;
        if (highest > least || share == 0.2) {
          name("compare.before", scale.y(before[at]), isCooler, at);
          name("compare.after", scale.y(after[at]), !isCooler, at);
          return;
        }
      }
    }
  }

  private void name(String key, double y, boolean isAbove, int at) {
    double bottom = CompareGeometry.TEMPERATURE_TOP + CompareGeometry.TEMPERATURE_HEIGHT - 6;
    double baseline = isAbove ? y - ABOVE : Math.min(y + BELOW, bottom);
    at(
        TextRow.Anchor.CENTRE,
        words.say(key),
        ComparePainter.x(at, seconds),
        baseline,
        "bold",
        "backed");
  }

  private void gain() {
    double top = CompareGeometry.GAIN_TOP;
    left(words.say("compare.gain"), 28, top + GAIN_NAME, "bold").within(NAME_ROOM);
    PictureScale scale = ComparePainter.gainScale(found);
    for (double value : scale.lines()) {
      if (scale.y(value) > top + GAIN_CLEAR) {
        at(
            TextRow.Anchor.RIGHT,
            comparison.quantities().temperatureDifference(value),
            CompareGeometry.VALUE_RIGHT,
            Math.min(scale.y(value) + MIDDLE, top + CompareGeometry.GAIN_HEIGHT - 3),
            "axis");
      }
    }
  }

  private void times() {
    at(
        TextRow.Anchor.RIGHT,
        words.say("compare.loadOn"),
        CompareGeometry.PLOT_LEFT + 8,
        CompareGeometry.TIMES_BASELINE,
        "axis");
    double last = CompareGeometry.PLOT_LEFT - LEAST_GAP;
    for (GainAt at : found.at()) {
      double x = ComparePainter.x(at.seconds(), seconds);
      if (at.seconds() < seconds && x - last >= LEAST_GAP) {
        at(
            TextRow.Anchor.CENTRE,
            words.say("compare.seconds", Integer.toString(at.seconds())),
            x,
            CompareGeometry.TIMES_BASELINE,
            "small",
            "bold");
        last = x;
      }
    }
    if (CompareGeometry.PLOT_RIGHT - last > 2 * LEAST_GAP) {
      at(
          TextRow.Anchor.RIGHT,
          words.say("compare.seconds", Integer.toString(seconds - 1)),
          CompareGeometry.PLOT_RIGHT,
          CompareGeometry.TIMES_BASELINE,
          "axis");
    }
    at(
        TextRow.Anchor.CENTRE,
        words.say("compare.settled"),
        CompareGeometry.SETTLED_X,
        CompareGeometry.TIMES_BASELINE,
        "small",
        "bold");
  }

  /** Where the columns of values stand: the time marks, spread where they would touch. */
  static double[] columns(Comparison found) {
    int seconds = ComparisonScales.seconds(found);
    double[] columns = new double[found.at().size()];
    double last = CompareGeometry.PLOT_LEFT - 12;
    for (int i = 0; i < columns.length; i++) {
      double wanted = ComparePainter.x(found.at().get(i).seconds(), seconds);
      columns[i] = Math.max(wanted, last + CompareTable.LEAST_GAP);
      last = columns[i];
    }
    return columns;
  }
}
