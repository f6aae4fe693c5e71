package steadypull.ui;

import java.util.List;
import java.util.function.Function;
import javafx.scene.layout.Pane;
import javafx.scene.shape.Rectangle;
import javafx.scene.text.Text;
import steadypull.report.ComparisonWords;
import steadypull.report.TimeRow;

/** The values of both sides under their time marks. FX thread only. */
final class CompareTable extends Pane {
  static final double LEAST_GAP = 68;

  private static final double NAME_ROOM = 94;
  private static final double MARK_LEFT = 126;
  private static final double MARK_WIDTH = 34;
  private static final double MARK_ABOVE_BASELINE = 7;
  private static final double HOLLOW_HEIGHT = 5;
  private static final double SOLID_HEIGHT = 4;
  private static final double VALUE_ROOM = 64;

  private final Words words;

  CompareTable(Words words) {
    this.words = words;
    setManaged(false);
    setPickOnBounds(false);
  }

  void show(ComparisonWords comparison) {
    getChildren().clear();
    List<TimeRow> times = comparison.times();
    double[] columns = CompareLabels.columns(comparison.comparison());
    row(0, "compare.before", times, columns, TimeRow::before);
    row(1, "compare.after", times, columns, TimeRow::after);
    row(2, "compare.gain", times, columns, TimeRow::gain, "bold");
    mark(0, HOLLOW_HEIGHT, "hollow-line");
    mark(1, SOLID_HEIGHT, "solid-line");
    getChildren()
        .add(
            Parked.line(foot(comparison), 28, CompareGeometry.FOOT_BASELINE, "small", "second")
                .within(CompareGeometry.LANES_WIDTH - 24));
  }

  /** The line of a side, as it is drawn above, beside its name. */
  private void mark(int number, double height, String style) {
    double middle = baseline(number) - MARK_ABOVE_BASELINE;
    Rectangle line = new Rectangle(MARK_LEFT, middle - height / 2, MARK_WIDTH, height);
    line.getStyleClass().add(style);
    getChildren().add(line);
  }

  private static double top(int number) {
    return CompareGeometry.TABLE_TOP
        + number * (CompareGeometry.TABLE_ROW + CompareGeometry.TABLE_GAP);
  }

  private static double baseline(int number) {
    return top(number) + CompareGeometry.TABLE_TEXT;
  }

  private String foot(ComparisonWords comparison) {
    return comparison.mismatch().map(load -> load + " ").orElse("") + words.say("compare.note");
  }

  private void row(
      int number,
      String key,
      List<TimeRow> times,
      double[] columns,
      Function<TimeRow, String> value,
      String... styles) {
    double top = top(number);
    double baseline = baseline(number);
    getChildren()
        .addAll(
            Parked.panel(
                CompareGeometry.LEFT, top, CompareGeometry.LANES_WIDTH, CompareGeometry.TABLE_ROW),
            Parked.line(words.say(key), 28, baseline, "bold").within(NAME_ROOM));
    for (int i = 0; i < times.size(); i++) {
      double x = i < columns.length ? columns[i] : CompareGeometry.SETTLED_X;
      Text text = TextRow.text(styles);
      text.setText(value.apply(times.get(i)));
      getChildren()
          .add(new TextRow(TextRow.Anchor.CENTRE).add(text, 0).at(x, baseline).within(VALUE_ROOM));
    }
  }
}
