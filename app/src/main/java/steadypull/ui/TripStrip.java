package steadypull.ui;

import java.util.Optional;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.layout.Region;
import javafx.scene.transform.Scale;
import steadypull.drive.TripPicture;

/** The small drawing of a trip; its pixels are those of the screen at any scale. */
final class TripStrip extends Region {
  private final Canvas canvas = new Canvas();
  private final Scale toDesign = new Scale();
  private Optional<TripPicture> picture = Optional.empty();
  private Light light = Light.DAY;
  private double density = 1;

  TripStrip() {
    setManaged(false);
    setMouseTransparent(true);
    canvas.getTransforms().add(toDesign);
    getChildren().add(canvas);
    setLayoutX(TripsGeometry.INNER_LEFT);
    setLayoutY(TripsGeometry.STRIP_TOP);
  }

  /** Shows a trip, or empty ground until it is read. */
  void show(Optional<TripPicture> changed) {
    picture = changed;
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
    double width = TripsGeometry.INNER_WIDTH;
    double height = TripsGeometry.STRIP_HEIGHT;
    canvas.setWidth(Math.ceil(width * density));
    canvas.setHeight(Math.ceil(height * density));
    toDesign.setX(1 / density);
    toDesign.setY(1 / density);
    GraphicsContext context = canvas.getGraphicsContext2D();
    context.save();
    context.clearRect(0, 0, canvas.getWidth(), canvas.getHeight());
    context.scale(density, density);
    picture.ifPresent(
        shown ->
            new TripStripPainter(new Pen(context, Palette.of(light)), width, height).paint(shown));
    context.restore();
  }
}
