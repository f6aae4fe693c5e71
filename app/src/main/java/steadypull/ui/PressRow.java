package steadypull.ui;

import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.VBox;

/** A wide row that does something: a caption and a remark. */
final class PressRow extends Button {
  private final Label caption = new Label();
  private final Label remark = new Label();

  PressRow(String text, Runnable action) {
    getStyleClass().setAll("button", "press", "choice");
    caption.getStyleClass().addAll("caption", "row-caption");
    remark.getStyleClass().add("remark");
    VBox lines = new VBox(caption, remark);
    lines.setAlignment(Pos.CENTER_LEFT);
    setGraphic(lines);
    setOnAction(_ -> action.run());
    show(text, "");
  }

  /** Changes caption and remark; an empty remark takes no room. */
  void show(String text, String note) {
    caption.setText(text);
    remark.setText(note);
    remark.setVisible(!note.isEmpty());
    remark.setManaged(!note.isEmpty());
    setAccessibleText(note.isEmpty() ? text : text + ", " + note);
  }

  /** Puts it somewhere at a fixed size. */
  void place(double x, double y, double width, double height) {
    setManaged(false);
    resizeRelocate(x, y, width, height);
  }
}
