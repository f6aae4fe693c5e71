package steadypull.ui;

import javafx.geometry.Pos;
import javafx.scene.control.Label;
import javafx.scene.control.ToggleButton;
import javafx.scene.layout.HBox;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import javafx.scene.shape.Circle;
import javafx.scene.text.Text;

/** One of several choices: a ring, a caption, a remark. */
final class ChoiceRow extends ToggleButton {
  private static final double RING = 12;
  private static final double CORE = 6.5;
  private static final double GAP = 18;

  /** What ring, gap, padding and a scroll bar leave of a column. */
  private static final double REMARK_WIDTH =
      ParkedGeometry.COLUMN_WIDTH - 2 * RING - GAP - 46 - ParkedGeometry.SCROLL_BAR;

  private static final double TAG_GAP = 12;

  private final Text remark = TextRow.text("remark");
  private final HBox first = new HBox(TAG_GAP);

  ChoiceRow(String text, String note) {
    getStyleClass().setAll("toggle-button", "press", "choice");
    Circle ring = new Circle(RING);
    Circle core = new Circle(CORE);
    ring.getStyleClass().add("ring");
    core.getStyleClass().add("core");
    first.setAlignment(Pos.BASELINE_LEFT);
    first.getChildren().add(label(text, "caption"));
    remark.setText(note);
    remark.setWrappingWidth(REMARK_WIDTH);
    VBox lines = new VBox(first);
    if (!note.isEmpty()) {
      lines.getChildren().add(remark);
    }
    lines.setAlignment(Pos.CENTER_LEFT);
    HBox row = new HBox(GAP, new StackPane(ring, core), lines);
    row.setAlignment(Pos.CENTER_LEFT);
    setGraphic(row);
    setMaxWidth(Double.MAX_VALUE);
    setMinHeight(ParkedGeometry.ROW_HEIGHT);
    setAccessibleText(note.isEmpty() ? text : text + ", " + note);
  }

  /** Adds a word of caution beside the caption. */
  void warn(String word) {
    Label tag = label(word, "tag");
    tag.setMinWidth(USE_PREF_SIZE);
    first.getChildren().add(tag);
    setAccessibleText(word + ", " + getAccessibleText());
  }

  private static Label label(String text, String styleClass) {
    Label label = new Label(text);
    label.getStyleClass().add(styleClass);
    return label;
  }
}
