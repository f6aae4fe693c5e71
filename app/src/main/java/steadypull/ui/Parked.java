package steadypull.ui;

import java.util.List;
import javafx.scene.Node;
import javafx.scene.control.ScrollPane;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.Pane;
import javafx.scene.layout.VBox;
import javafx.scene.text.Text;

/** Parts that all parked screens share. */
final class Parked {
  private Parked() {}

  /** A root with its title and subtitle. */
  static Pane page(String title, String subtitle) {
    Pane page = new Pane();
    page.setPrefSize(DriveGeometry.WIDTH, DriveGeometry.HEIGHT);
    page.getChildren()
        .addAll(
            line(title, ParkedGeometry.LEFT, ParkedGeometry.TITLE_BASELINE, "headline"),
            line(subtitle, ParkedGeometry.LEFT, ParkedGeometry.SUBTITLE_BASELINE, "prose"));
    return page;
  }

  /** Adds the row, and the key, by which a page of text is left. */
  static void addWayBack(Pane page, String id, String label, Runnable back) {
    PressRow row = new PressRow(label, back);
    row.setId(id);
    row.place(
        ParkedGeometry.LEFT,
        ParkedGeometry.BOTTOM - ParkedGeometry.ROW_HEIGHT,
        ParkedGeometry.MENU_WIDTH,
        ParkedGeometry.ROW_HEIGHT);
    page.getChildren().add(row);
    page.addEventHandler(
        KeyEvent.KEY_PRESSED,
        event -> {
          if (event.getCode() == KeyCode.ESCAPE) {
            back.run();
            event.consume();
          }
        });
  }

  /** One line of text on a baseline. */
  static TextRow line(String words, double x, double baseline, String... styleClasses) {
    Text text = TextRow.text(styleClasses);
    text.setText(words);
    return new TextRow(TextRow.Anchor.LEFT).add(text, 0).at(x, baseline);
  }

  /** Paragraphs one under the other. */
  static VBox prose(
      List<String> paragraphs, double x, double y, double width, String... styleClasses) {
    VBox prose = new VBox(ParkedGeometry.PROSE_GAP);
    for (String paragraph : paragraphs) {
      Text text = TextRow.text("prose");
      text.getStyleClass().addAll(styleClasses);
      text.setText(paragraph);
      text.setWrappingWidth(width);
      prose.getChildren().add(text);
    }
    prose.relocate(x, y);
    return prose;
  }

  /** Number and title of a step. */
  static List<TextRow> step(String number, String title, double x) {
    double baseline = ParkedGeometry.STEP_BASELINE;
    return List.of(
        line(number, x, baseline, "step"),
        line(title, x + ParkedGeometry.STEP_TITLE_INDENT, baseline, "step-title"));
  }

  /** An empty list of rows. */
  static VBox list() {
    return new VBox(ParkedGeometry.ROW_GAP);
  }

  /** Rows of a column that may be too many for it. */
  static ScrollPane scroll(VBox rows, double x, double top, double bottom) {
    return scroll(rows, x, top, ParkedGeometry.COLUMN_WIDTH, bottom);
  }

  /** Rows of a list of any width that may be too many for its height. */
  static ScrollPane scroll(VBox rows, double x, double top, double width, double bottom) {
    ScrollPane scroll = new ScrollPane(rows);
    scroll.getStyleClass().add("list");
    scroll.setFitToWidth(true);
    scroll.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
    scroll.setManaged(false);
    scroll.setFocusTraversable(false);
    scroll.resizeRelocate(x, top, width, bottom - ParkedGeometry.ROW_GAP - top);
    return scroll;
  }

  /** Selects the row of a list that stands for a thing. */
  static void select(VBox rows, Object chosen) {
    for (Node node : rows.getChildren()) {
      if (node instanceof ChoiceRow row) {
        row.setSelected(chosen.equals(row.getUserData()));
      }
    }
  }

  /** What the rows under it have in common. */
  static Node caption(String words) {
    return inColumn(words, "field-label");
  }

  /** A sentence in place of rows. */
  static Node remark(String words) {
    return inColumn(words, "prose");
  }

  private static Node inColumn(String words, String styleClass) {
    Text text = TextRow.text(styleClass);
    text.setText(words);
    text.setWrappingWidth(ParkedGeometry.COLUMN_WIDTH - ParkedGeometry.PAD);
    return text;
  }

  /** A square panel. */
  static Pane panel(double x, double y, double width, double height) {
    Pane panel = new Pane();
    panel.getStyleClass().add("panel");
    panel.setManaged(false);
    panel.resizeRelocate(x, y, width, height);
    return panel;
  }
}
