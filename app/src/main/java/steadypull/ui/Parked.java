package steadypull.ui;

import java.util.List;
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

  /** A square panel. */
  static Pane panel(double x, double y, double width, double height) {
    Pane panel = new Pane();
    panel.getStyleClass().add("panel");
    panel.setManaged(false);
    panel.resizeRelocate(x, y, width, height);
    return panel;
  }
}
