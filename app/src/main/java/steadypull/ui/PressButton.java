package steadypull.ui;

import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.VBox;
import javafx.scene.shape.SVGPath;

/** A large button of icon and caption. */
final class PressButton extends Button {
  private static final double ICON_GAP = 12;
  private static final double TIGHT_GAP = 5;

  private final SVGPath icon = new SVGPath();
  private final Label caption = new Label();
  private final Label remark = new Label();

  PressButton(Icon shape, String text, Runnable action) {
    getStyleClass().setAll("button", "press");
    icon.getStyleClass().add("icon");
    caption.getStyleClass().add("caption");
    caption.setMinWidth(USE_PREF_SIZE);
    remark.getStyleClass().add("remark");
    remark.setMinWidth(USE_PREF_SIZE);
    VBox lines = new VBox(caption, remark);
    lines.setAlignment(Pos.CENTER);
    VBox stack = new VBox(ICON_GAP, icon, lines);
    stack.setAlignment(Pos.CENTER);
    setGraphic(stack);
    setOnAction(_ -> action.run());
    show(shape, text);
  }

  /** Makes it the main choice. */
  PressButton solid() {
    getStyleClass().add("solid");
    return this;
  }

  /** Changes icon and caption. */
  void show(Icon shape, String text) {
    icon.setContent(shape.path());
    icon.setManaged(shape != Icon.NONE);
    icon.setVisible(shape != Icon.NONE);
    caption.setText(text);
    note("");
  }

  /** Adds a second line to the caption; an empty one takes no room. */
  void note(String text) {
    remark.setText(text);
    remark.setVisible(!text.isEmpty());
    remark.setManaged(!text.isEmpty());
    ((VBox) getGraphic()).setSpacing(text.isEmpty() ? ICON_GAP : TIGHT_GAP);
    setAccessibleText(text.isEmpty() ? caption.getText() : caption.getText() + ", " + text);
  }

  /** Puts it somewhere at a fixed size. */
  void place(double x, double y, double width, double height) {
    setManaged(false);
    resizeRelocate(x, y, width, height);
  }
}
