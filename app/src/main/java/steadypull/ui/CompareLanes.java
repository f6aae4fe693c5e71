package steadypull.ui;

import java.util.Optional;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.layout.Pane;
import javafx.scene.transform.Scale;
import steadypull.report.ComparisonWords;

/**
 * The lanes of a comparison: a canvas, its pixels those of the screen at any scale, with the words
 * over it. FX thread only.
 */
final class CompareLanes extends Pane {
  private final Words words;
  private final Canvas canvas = new Canvas();
  private final Scale toDesign = new Scale();
  private final Pane labels = new Pane();
  private Optional<ComparisonWords> shown = Optional.empty();
  private Light light = Light.DAY;
  private double density = 1;

  CompareLanes(Words words) {
    this.words = words;
    setManaged(false);
    setPickOnBounds(false);
    canvas.setMouseTransparent(true);
    canvas.getTransforms().add(toDesign);
    ground(CompareGeometry.LOAD_TOP, CompareGeometry.LOAD_HEIGHT);
    ground(CompareGeometry.TEMPERATURE_TOP, CompareGeometry.TEMPERATURE_HEIGHT);
    ground(CompareGeometry.GAIN_TOP, CompareGeometry.GAIN_HEIGHT);
    getChildren().addAll(canvas, labels);
  }

  private void ground(double top, double height) {
    getChildren().add(Parked.panel(CompareGeometry.LEFT, top, CompareGeometry.LANES_WIDTH, height));
  }

  void show(ComparisonWords comparison) {
    shown = Optional.of(comparison);
    labels.getChildren().setAll(new CompareLabels(words, comparison).rows());
    draw();
  }

  void setLight(Light changed) {
    light = changed;
    draw();
  }

  /** Sets how many pixels of the window stand for one of the design. */
  void setDensity(double changed) {
    if (changed > 0 && changed != density) {
      density = changed;
      draw();
    }
  }

  private void draw() {
    canvas.setWidth(Math.ceil(CompareGeometry.LANES_RIGHT * density));
    canvas.setHeight(Math.ceil(CompareGeometry.TABLE_TOP * density));
    toDesign.setX(1 / density);
    toDesign.setY(1 / density);
    GraphicsContext context = canvas.getGraphicsContext2D();
    context.save();
    context.clearRect(0, 0, canvas.getWidth(), canvas.getHeight());
    context.scale(density, density);
    shown.ifPresent(
        comparison -> new ComparePainter(new Pen(context, Palette.of(light)), comparison).paint());
    context.restore();
  }
}
