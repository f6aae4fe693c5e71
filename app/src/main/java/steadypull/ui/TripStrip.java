package steadypull.ui;

import java.util.Optional;
import java.util.function.Consumer;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.layout.Region;
import javafx.scene.transform.Scale;
import steadypull.drive.TripWindow;
import steadypull.ui.TripsModel.ChosenTrip;

/**
 * The small drawing of a trip, in which people move and come closer; its pixels are those of the
 * screen at any scale.
 */
final class TripStrip extends Region {
  private final Canvas canvas = new Canvas();
  private final Scale toDesign = new Scale();
  private final StripHand hand;
  private Optional<ChosenTrip> chosen = Optional.empty();
  private Light light = Light.DAY;
  private double density = 1;

  /**
   * An empty strip.
   *
   * @param look asks for another window of the trip
   */
  TripStrip(String accessibleText, Consumer<TripWindow> look) {
    hand = new StripHand(this, look);
    setManaged(false);
    setId("trip-strip");
    getStyleClass().add("trip-strip");
    setAccessibleText(accessibleText);
    setFocusTraversable(true);
    canvas.setMouseTransparent(true);
    canvas.getTransforms().add(toDesign);
    getChildren().add(canvas);
    resizeRelocate(
        TripsGeometry.INNER_LEFT,
        TripsGeometry.STRIP_TOP,
        TripsGeometry.INNER_WIDTH,
        TripsGeometry.STRIP_HEIGHT);
  }

  /** Shows a trip, or empty ground until it is read. */
  void show(Optional<ChosenTrip> changed) {
    boolean isSame =
        changed.map(ChosenTrip::id).equals(chosen.map(ChosenTrip::id)) && changed.isPresent();
    if (!isSame) {
      hand.take(changed.map(trip -> TripWindow.whole(trip.trip().summary())));
    }
    chosen = changed;
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
    TripStripPainter painter =
        new TripStripPainter(new Pen(context, Palette.of(light)), width, height);
    chosen.ifPresent(
        trip ->
            trip.picture()
                .ifPresent(whole -> painter.paint(trip.shown().orElse(whole), whole.nearest())));
    context.restore();
  }
}
