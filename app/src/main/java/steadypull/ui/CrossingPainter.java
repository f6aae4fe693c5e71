package steadypull.ui;

import java.util.List;
import java.util.OptionalDouble;
import steadypull.thermal.ChannelForecast;

/** Draws what runs through all strips: the Now line, its dots, and the moment of crossing. */
final class CrossingPainter {
  private static final double NOTCH_HALF = 9;
  private static final double NOTCH_HEIGHT = 12;
  private static final double OVER_ROAD = 3;

  private final Pen pen;

  CrossingPainter(Pen pen) {
    this.pen = pen;
  }

  void paint(List<PlotStrip> strips, RoadFace road) {
    for (PlotStrip strip : strips) {
      if (strip.leads()) {
        secondsToCrossing(strip).ifPresent(seconds -> crossing(strip, road, seconds));
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

  /** Seconds until the median meets the limit, if it does so inside the chart. */
  private static OptionalDouble secondsToCrossing(PlotStrip strip) {
    if (strip.face().tone() == Tone.NEUTRAL
        || !(strip.face().state().forecast() instanceof ChannelForecast.Ready ready)
        || ready.toLimit().isEmpty()
        || ready.nowCelsius() >= ready.toLimit().get().limitCelsius()) {
      return OptionalDouble.empty();
    }
    OptionalDouble seconds = ready.toLimit().get().seconds();
    return seconds.isPresent() && seconds.getAsDouble() <= CourseWords.HORIZON_SECONDS
        ? seconds
        : OptionalDouble.empty();
  }

  private void crossing(PlotStrip strip, RoadFace road, double seconds) {
    Token token = strip.face().tone().limit();
    double x = StripScale.x(seconds);
    double limit = strip.scale().limitY();
    double ground = RoadScale.of(road).aheadY(seconds) - OVER_ROAD;
    pen.stroke(token, 2, 3, 6);
    pen.context().strokeLine(x, limit, x, ground - NOTCH_HEIGHT);
    notch(token, x, limit - 1);
    notch(token, x, ground);
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
