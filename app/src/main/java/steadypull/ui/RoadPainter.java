package steadypull.ui;

import javafx.scene.canvas.GraphicsContext;
import javafx.scene.paint.Color;
import steadypull.drive.Trace;

/**
 * Draws the road strip: ground behind and, as far as it is known, ahead, a dotted line beyond, the
 * climb, and the rig between them.
 */
final class RoadPainter {
  private static final double SECONDS_PER_MICRO = 1e-6;
  private static final double RIG_SCALE = 1.12;
  private static final double RIG_LIFT = 2;
  private static final double PAST_OPACITY = 0.55;
  private static final double SLOPE_SECONDS = 12;
  private static final double DOT_GAP = 8;
  private static final int GROUND_STEPS = 138;

  private final Pen pen;
  private final Palette palette;

  RoadPainter(Pen pen, Palette palette) {
    this.pen = pen;
    this.palette = palette;
  }

  void paint(RoadFace face) {
    double left = DriveGeometry.STRIP_LEFT;
    double right = DriveGeometry.STRIP_RIGHT;
    pen.fill(
        Token.SURFACE,
        left,
        DriveGeometry.ROAD_TOP,
        right - left,
        DriveGeometry.ROAD_BOTTOM - DriveGeometry.ROAD_TOP);
    pen.line(
        Token.RULE, 1, left, DriveGeometry.ROAD_RULE + 0.5, right, DriveGeometry.ROAD_RULE + 0.5);
    RoadScale scale = RoadScale.of(face);
    behind(face, scale);
    ground(scale);
    beyond(face, scale);
    face.state().climb().ifPresent(new ClimbPainter(pen)::paint);
  }

  /** The ground ahead, as far as it is certain. */
  private void ground(RoadScale scale) {
    double end = scale.ahead().certainSeconds();
    if (!scale.ahead().isKnown()) {
      return;
    }
    double[] x = new double[GROUND_STEPS + 3];
    double[] y = new double[GROUND_STEPS + 3];
    for (int step = 0; step <= GROUND_STEPS; step++) {
      double seconds = end * step / GROUND_STEPS;
      x[step] = StripScale.x(seconds);
      y[step] = scale.aheadY(seconds);
    }
    x[GROUND_STEPS + 1] = x[GROUND_STEPS];
    y[GROUND_STEPS + 1] = DriveGeometry.ROAD_CHART_BOTTOM;
    x[GROUND_STEPS + 2] = x[0];
    y[GROUND_STEPS + 2] = DriveGeometry.ROAD_CHART_BOTTOM;
    pen.polygon(Token.TERRAIN, 1, x, y, GROUND_STEPS + 3);
    pen.stroke(Token.TERRAIN_LINE, 2.5);
    pen.roundCaps();
    pen.polyline(x, y, GROUND_STEPS + 1);
  }

  private void behind(RoadFace face, RoadScale scale) {
    Trace trace = face.state().behind();
    if (trace.size() < 2) {
      return;
    }
    int count = trace.size();
    double[] x = new double[count + 3];
    double[] y = new double[count + 3];
    for (int point = 0; point < count; point++) {
      double seconds = (trace.timeMicros(point) - face.timeMicros()) * SECONDS_PER_MICRO;
      x[point] = Math.max(DriveGeometry.CHART_LEFT, StripScale.x(seconds));
      y[point] = scale.y(trace.value(point));
    }
    x[count] = DriveGeometry.NOW;
    y[count] = scale.y(0);
    x[count + 1] = DriveGeometry.NOW;
    y[count + 1] = DriveGeometry.ROAD_CHART_BOTTOM;
    x[count + 2] = x[0];
    y[count + 2] = DriveGeometry.ROAD_CHART_BOTTOM;
    pen.polygon(Token.TERRAIN, PAST_OPACITY, x, y, count + 3);
    pen.stroke(Token.TERRAIN_LINE, 2.5);
    pen.roundCaps();
    pen.polyline(x, y, count + 1);
  }

  /** What is only assumed. */
  private void beyond(RoadFace face, RoadScale scale) {
    double from = StripScale.x(scale.ahead().certainSeconds()) + DOT_GAP;
    double to = DriveGeometry.CHART_RIGHT - 2;
    boolean isAssumed = scale.ahead().isKnown() || face.state().gradePercent().isPresent();
    if (!isAssumed || from >= to) {
      return;
    }
    double[] x = new double[GROUND_STEPS + 1];
    double[] y = new double[GROUND_STEPS + 1];
    for (int step = 0; step <= GROUND_STEPS; step++) {
      x[step] = from + (to - from) * step / GROUND_STEPS;
      y[step] = scale.aheadY(StripScale.seconds(x[step]));
    }
    pen.stroke(Token.TERRAIN_LINE, 3, 0.1, DOT_GAP);
    pen.roundCaps();
    pen.polyline(x, y, GROUND_STEPS + 1);
  }

  /** Draws the rig over everything else, standing on the slope. */
  void rig(RoadFace face) {
    RoadScale scale = RoadScale.of(face);
    double rise = scale.aheadY(0) - scale.aheadY(SLOPE_SECONDS);
    double run = StripScale.x(SLOPE_SECONDS) - StripScale.x(0);
    GraphicsContext context = pen.context();
    context.save();
    context.translate(DriveGeometry.NOW - 4, scale.y(0) - RIG_LIFT);
    context.rotate(-Math.toDegrees(Math.atan2(rise, run)));
    context.scale(RIG_SCALE, RIG_SCALE);
    body(context);
    wheels(context);
    context.restore();
  }

  private void body(GraphicsContext context) {
    context.setFill(palette.colour(Token.INK));
    context.fillPolygon(
        new double[] {2, 2, 14, 19, 27, 27}, new double[] {-5, -15, -15, -10, -10, -4}, 6);
    context.fillRect(-28, -19, 23, 14);
    context.fillRect(-5, -7, 8, 2.4);
  }

  private void wheels(GraphicsContext context) {
    Color rim = palette.colour(Token.SURFACE);
    for (double[] wheel : new double[][] {{8, 3.9}, {22, 3.9}, {-12, 3.6}, {-20, 3.6}}) {
      double radius = wheel[1];
      context.setFill(rim);
      disc(context, wheel[0], radius + 0.8);
      context.setFill(palette.colour(Token.INK));
      disc(context, wheel[0], radius - 0.8);
    }
  }

  private static void disc(GraphicsContext context, double x, double radius) {
    context.fillOval(x - radius, -3.4 - radius, 2 * radius, 2 * radius);
  }
}
