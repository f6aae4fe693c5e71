package steadypull.ui;

import steadypull.drive.Trace;
import steadypull.thermal.ChannelForecast;
import steadypull.thermal.Fan;

/** Draws the chart of one strip: ceiling, trace, fan, dashed line. */
final class StripPainter {
  private static final double FAN_STEP_SECONDS = 4;
  private static final int FAN_POINTS = (int) (CourseWords.HORIZON_SECONDS / FAN_STEP_SECONDS) + 1;
  private static final double SECONDS_PER_MICRO = 1e-6;
  private static final double GAP_SECONDS = 5;
  private static final double HATCH_STEP = 8 * Math.sqrt(2);
  private static final double HALO = 0.8;
  private static final double HALO_WIDTH = 8;
  static final int P05 = 0;
  private static final int P25 = 2;
  private static final int P75 = 4;
  private static final int P95 = 6;

  private final Pen pen;

  StripPainter(Pen pen) {
    this.pen = pen;
  }

  void paint(PlotStrip strip, long nowMicros) {
    StripSlot slot = strip.slot();
    pen.fill(
        Token.SURFACE,
        DriveGeometry.STRIP_LEFT,
        slot.top(),
        DriveGeometry.STRIP_RIGHT - DriveGeometry.STRIP_LEFT,
        slot.height());
    ceiling(strip);
    pen.within(
        DriveGeometry.CHART_LEFT,
        slot.top(),
        DriveGeometry.CHART_RIGHT - DriveGeometry.CHART_LEFT,
        slot.height(),
        () -> curves(strip, nowMicros));
  }

  private void ceiling(PlotStrip strip) {
    boolean hasLimit = strip.face().state().limit().isPresent();
    StripSlot slot = strip.slot();
    double under = hasLimit ? strip.scale().limitY() : slot.top();
    double bottom = slot.top() + slot.height();
    pen.fill(
        Token.GROUND,
        0.5,
        DriveGeometry.NOW,
        under,
        DriveGeometry.CHART_RIGHT - DriveGeometry.NOW,
        bottom - under);
    for (int minute = -2; minute <= 2; minute++) {
      if (minute != 0) {
        double x = StripScale.x(minute * 60.0);
        pen.line(Token.RULE, 0.8, x, under, x, bottom);
      }
    }
    if (hasLimit) {
      hatch(strip, under);
    }
  }

  private void hatch(PlotStrip strip, double limitY) {
    Tone tone = strip.face().tone();
    double top = strip.slot().top();
    double height = limitY - top;
    double width = DriveGeometry.CHART_RIGHT - DriveGeometry.CHART_LEFT;
    pen.within(
        DriveGeometry.CHART_LEFT,
        top,
        width,
        height,
        () -> {
          pen.faintStroke(
              tone.hatch(), tone == Tone.NEUTRAL ? 0.75 : 1, tone == Tone.NEUTRAL ? 1 : 1.8);
          for (double x = 0; x < width + height; x += HATCH_STEP) {
            double from = DriveGeometry.CHART_LEFT + x;
            pen.context().strokeLine(from, top, from - height, limitY);
          }
        });
    pen.line(
        tone.limit(),
        tone == Tone.NEUTRAL ? 2 : 3,
        DriveGeometry.CHART_LEFT,
        limitY,
        DriveGeometry.CHART_RIGHT,
        limitY);
  }

  private void curves(PlotStrip strip, long nowMicros) {
    if (isFresh(strip) && strip.face().state().forecast() instanceof ChannelForecast.Ready ready) {
      fan(strip, ready.fan());
    }
    trace(strip, nowMicros);
  }

  private static boolean isFresh(PlotStrip strip) {
    return !strip.face().stale();
  }

  private void fan(PlotStrip strip, Fan fan) {
    Tone tone = strip.face().tone();
    band(strip, fan, P05, P95, tone.outerBand());
    band(strip, fan, P25, P75, tone.innerBand());
    if (strip.leads()) {
      pen.stroke(tone == Tone.DANGER ? Token.RED_INK : Token.INK, 2.5, 2, 7);
    } else {
      pen.stroke(Token.INK2, 2, 2, 6);
    }
    pen.roundCaps();
    median(strip, fan);
    if (strip.leads() && strip.face().state().eased().isPresent()) {
      Fan eased = strip.face().state().eased().get();
      pen.faintStroke(Token.SURFACE, HALO, HALO_WIDTH);
      median(strip, eased);
      pen.stroke(Token.INK, 3, 14, 7);
      median(strip, eased);
    }
  }

  private void band(PlotStrip strip, Fan fan, int low, int high, Token token) {
    double[] x = new double[2 * FAN_POINTS];
    double[] y = new double[2 * FAN_POINTS];
    StripScale scale = strip.scale();
    for (int point = 0; point < FAN_POINTS; point++) {
      double ahead = point * FAN_STEP_SECONDS;
      int back = 2 * FAN_POINTS - 1 - point;
      x[point] = StripScale.x(ahead);
      x[back] = x[point];
      y[point] = scale.y(fan.at(high, ahead));
      y[back] = scale.y(fan.at(low, ahead));
    }
    pen.polygon(token, 1, x, y, x.length);
  }

  private void median(PlotStrip strip, Fan fan) {
    double[] x = new double[FAN_POINTS];
    double[] y = new double[FAN_POINTS];
    StripScale scale = strip.scale();
    for (int point = 0; point < FAN_POINTS; point++) {
      x[point] = StripScale.x(point * FAN_STEP_SECONDS);
      y[point] = scale.y(fan.at(Fan.MEDIAN, point * FAN_STEP_SECONDS));
    }
    pen.polyline(x, y, FAN_POINTS);
  }

  private void trace(PlotStrip strip, long nowMicros) {
    Trace trace = strip.face().state().trace();
    pen.stroke(Token.INK, strip.leads() ? 3.2 : 2.6);
    pen.roundCaps();
    int from = 0;
    for (int point = 1; point <= trace.size(); point++) {
      if (point == trace.size() || isGap(trace, point)) {
        run(strip, trace, from, point, nowMicros);
        from = point;
      }
    }
  }

  private static boolean isGap(Trace trace, int point) {
    return (trace.timeMicros(point) - trace.timeMicros(point - 1)) * SECONDS_PER_MICRO
        > GAP_SECONDS;
  }

  private void run(PlotStrip strip, Trace trace, int from, int until, long nowMicros) {
    double[] x = new double[until - from + 1];
    double[] y = new double[until - from + 1];
    for (int point = from; point < until; point++) {
      x[point - from] = x(trace, point, nowMicros);
      y[point - from] = strip.scale().y(trace.value(point));
    }
    int count = until - from;
    if (until == trace.size() && isFresh(strip)) {
      x[count] = DriveGeometry.NOW;
      y[count] = nowY(strip);
      count++;
    }
    pen.polyline(x, y, count);
  }

  private static double x(Trace trace, int point, long nowMicros) {
    return StripScale.x((trace.timeMicros(point) - nowMicros) * SECONDS_PER_MICRO);
  }

  /** y of the dot at Now: where the fan begins, else the last value. */
  static double nowY(PlotStrip strip) {
    return strip.face().state().forecast() instanceof ChannelForecast.Ready ready
        ? strip.scale().y(ready.fan().at(Fan.MEDIAN, 0))
        : strip.scale().y(strip.face().state().latestCelsius().orElse(0));
  }
}
