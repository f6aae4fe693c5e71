package steadypull.ui;

import javafx.scene.Group;
import javafx.scene.shape.FillRule;
import javafx.scene.shape.SVGPath;
import javafx.scene.transform.Scale;

/** A clearance glyph at any size. */
final class GlyphView extends Group {
  private final SVGPath shape = new SVGPath();
  private final Scale scale = new Scale();

  GlyphView() {
    shape.setFillRule(FillRule.EVEN_ODD);
    shape.getTransforms().add(scale);
    getChildren().add(shape);
    setManaged(false);
  }

  /** Shows a glyph. */
  void show(Glyph glyph) {
    shape.setContent(glyph.path());
    shape.getStyleClass().setAll("glyph");
    if (!glyph.styleClass().isEmpty()) {
      shape.getStyleClass().add(glyph.styleClass());
    }
  }

  /** Puts the upper left corner of the 48 box somewhere, at a scale. */
  void place(double x, double y, double factor) {
    scale.setX(factor);
    scale.setY(factor);
    setLayoutX(x);
    setLayoutY(y);
  }
}
