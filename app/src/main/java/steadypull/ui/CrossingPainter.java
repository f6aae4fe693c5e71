package steadypull.ui;

import java.util.List;

/** Draws what runs through all strips: the Now line, its dots, and the moment of crossing. */
final class CrossingPainter {
  private static final double NOTCH_HALF = 9;
  private static final double NOTCH_HEIGHT = 12;
  private static final double OVER_ROAD = 3;
  private static final double AXIS_END_WIDTH = 88;
  private static final double AXIS_MINUTE_HALF = 10;

  private final Pen pen;

  CrossingPainter(Pen pen) {
    this.pen = pen;
  }

  void paint(List<PlotStrip> strips, RoadFace road) {
    for (PlotStrip strip : strips) {
      if (strip.leads() && strip.face().tone() != Tone.NEUTRAL) {
        StripLabels.secondsToCrossing(strip.face().state())
            .ifPresent(seconds -> crossing(strip, road, seconds));
      }
    }
    nowLine(DriveGeometry.STRIPS_TOP, DriveGeometry.STRIPS_BOTTOM);
    nowLine(DriveGeometry.ROAD_TOP, DriveGeometry.ROAD_CHART_BOTTOM);
    for (PlotStrip strip : strips) {
      if (!strip.face().stale()) {
        dot(strip);
      }
    }
  }

  private void nowLine(double top, double bottom) {
    pen.line(Token.INK, 2, DriveGeometry.NOW, top, DriveGeometry.NOW, bottom);
  }

  private void dot(PlotStrip strip) {
    double radius = strip.leads() ? 6.5 : 5;
    pen.dot(Token.INK, Token.SURFACE, DriveGeometry.NOW, StripPainter.nowY(strip), radius);
  }

  private void crossing(PlotStrip strip, RoadFace road, double seconds) {
    Token token = strip.face().tone().limit();
    double x = StripScale.x(seconds);
    double limit = strip.scale().limitY();
    double ground = RoadScale.of(road).aheadY(seconds) - OVER_ROAD;
    pen.stroke(token, 2, 3, 6);
    if (liesOnAxisLabel(x)) {
      pen.context().strokeLine(x, limit, x, DriveGeometry.STRIPS_BOTTOM);
      pen.context().strokeLine(x, DriveGeometry.ROAD_TOP, x, ground - NOTCH_HEIGHT);
    } else {
      pen.context().strokeLine(x, limit, x, ground - NOTCH_HEIGHT);
    }
    notch(token, x, limit - 1);
    notch(token, x, ground);
  }

  private static boolean liesOnAxisLabel(double x) {
    return x > DriveGeometry.CHART_RIGHT - AXIS_END_WIDTH
        || Math.abs(x - DriveGeometry.NOW - DriveGeometry.MINUTE) < AXIS_MINUTE_HALF;
  }

  private void notch(Token token, double x, double tip) {
    pen.polygon(
        token,
        1,
        new double[] {x - NOTCH_HALF, x + NOTCH_HALF, x},
        new double[] {tip - NOTCH_HEIGHT, tip - NOTCH_HEIGHT, tip},
        3);
  }
}
