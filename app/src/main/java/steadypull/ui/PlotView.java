package steadypull.ui;

import java.util.List;
import java.util.Optional;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.layout.Region;
import javafx.scene.transform.Scale;
import steadypull.drive.StripState;

/**
 * The one canvas under all strips and the road. It is redrawn at most once a pulse, and only after
 * something that it shows has changed; its pixels are those of the screen at any scale.
 */
final class PlotView extends Region {
  private static final double NO_LIMIT_ROOM_ABOVE = 24;

  private final Canvas canvas = new Canvas();
  private final Scale toDesign = new Scale();

  private List<PlotStrip> strips = List.of();
  private Optional<RoadFace> road = Optional.empty();
  private long nowMicros;
  private Light light = Light.DAY;
  private double density = 1;
  private boolean isDirty = true;

  PlotView() {
    setManaged(false);
    setMouseTransparent(true);
    canvas.getTransforms().add(toDesign);
    getChildren().add(canvas);
  }

  /** The scale of a strip; one without a limit has its last value in the middle. */
  static StripScale scale(StripState state, StripSlot slot) {
    double limit =
        state
            .limit()
            .map(each -> each.celsius())
            .orElseGet(() -> state.latestCelsius().orElse(0) + NO_LIMIT_ROOM_ABOVE);
    return new StripScale(slot, limit);
  }

  void showStrips(List<PlotStrip> changed, long timeMicros) {
    strips = List.copyOf(changed);
    nowMicros = timeMicros;
    mark();
  }

  void showRoad(RoadFace changed) {
    road = Optional.of(changed);
    mark();
  }

  void setLight(Light changed) {
    light = changed;
    mark();
  }

  /** Sets how many pixels of the window stand for one of the design. */
  void setDensity(double changed) {
    if (changed > 0 && changed != density) {
      density = changed;
      mark();
    }
  }

  private void mark() {
    isDirty = true;
    requestLayout();
  }

  @Override
  protected void layoutChildren() {
    if (isDirty) {
      isDirty = false;
      draw();
    }
  }

  private void draw() {
    fitCanvas();
    GraphicsContext context = canvas.getGraphicsContext2D();
    context.save();
    context.clearRect(0, 0, canvas.getWidth(), canvas.getHeight());
    context.scale(density, density);
    Palette palette = Palette.of(light);
    Pen pen = new Pen(context, palette);
    if (strips.isEmpty()) {
      emptyPanel(pen);
    }
    strips.forEach(strip -> new StripPainter(pen).paint(strip, nowMicros));
    road.ifPresent(face -> drawRoad(face, pen, palette));
    context.restore();
  }

  private void drawRoad(RoadFace face, Pen pen, Palette palette) {
    RoadPainter painter = new RoadPainter(pen, palette);
    painter.paint(face);
    if (!strips.isEmpty()) {
      new CrossingPainter(pen).paint(strips, face);
    }
    painter.rig(face);
  }

  private static void emptyPanel(Pen pen) {
    pen.fill(
        Token.SURFACE,
        DriveGeometry.STRIP_LEFT,
        DriveGeometry.STRIPS_TOP,
        DriveGeometry.STRIP_RIGHT - DriveGeometry.STRIP_LEFT,
        DriveGeometry.STRIPS_BOTTOM - DriveGeometry.STRIPS_TOP);
  }

  private void fitCanvas() {
    canvas.setWidth(Math.ceil(DriveGeometry.STRIP_RIGHT * density));
    canvas.setHeight(Math.ceil(DriveGeometry.ROAD_BOTTOM * density));
    toDesign.setX(1 / density);
    toDesign.setY(1 / density);
  }
}
