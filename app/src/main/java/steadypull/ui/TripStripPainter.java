package steadypull.ui;

import java.util.Optional;
import steadypull.channel.Channel;
import steadypull.drive.TripPicture;
import steadypull.drive.TripWindow;
import steadypull.store.column.PixelLine;

/**
 * Draws a whole trip as one strip: every limited channel under the one ceiling that stands for its
 * own limit, so that gaps compare. The channel that came nearest is the strong line.
 */
final class TripStripPainter {
  /** As in every strip: 40 degrees under the limit to 8 over. */
  private static final double UNDER_KELVIN = 40;

  private static final double OVER_KELVIN = 8;
  private static final double EDGE = 3;
  private static final double HATCH_STEP = 8 * Math.sqrt(2);
  private static final double STRONG = 2.6;
  private static final double FAINT = 1.4;

  private final Pen pen;
  private final double width;
  private final double height;
  private final double limitY;

  TripStripPainter(Pen pen, double width, double height) {
    this.pen = pen;
    this.width = width;
    this.height = height;
    this.limitY = height * OVER_KELVIN / (OVER_KELVIN + UNDER_KELVIN);
  }

  /**
   * Paints a window of a trip.
   *
   * @param nearest the strong line
   */
  void paint(TripPicture picture, Optional<TripPicture.Line> nearest) {
    pen.fill(Token.GROUND, 0, 0, width, height);
    ceiling();
    pen.within(0, 0, width, height, () -> traces(picture, nearest));
  }

  private void traces(TripPicture picture, Optional<TripPicture.Line> nearest) {
    Optional<Channel> strong = nearest.map(TripPicture.Line::channel);
    for (TripPicture.Line line : picture.lines()) {
      if (!strong.equals(Optional.of(line.channel()))) {
        trace(picture, line, Token.INK3, FAINT);
      }
    }
    for (TripPicture.Line line : picture.lines()) {
      if (strong.equals(Optional.of(line.channel()))) {
        trace(picture, line, picture.isExact() ? Token.INK : Token.INK3, STRONG);
      }
    }
  }

  private void ceiling() {
    pen.within(
        0,
        0,
        width,
        limitY,
        () -> {
          pen.faintStroke(Token.EDGE, 0.75, 1);
          for (double x = 0; x < width + limitY; x += HATCH_STEP) {
            pen.context().strokeLine(x, 0, x - limitY, limitY);
          }
        });
    pen.line(Token.INK2, 2, 0, limitY, width, limitY);
  }

  private void trace(TripPicture picture, TripPicture.Line drawn, Token token, double strength) {
    pen.stroke(token, strength);
    PixelLine line = drawn.line();
    TripWindow window = picture.window();
    StripTrace trace = new StripTrace(pen, 4 * line.columns() + 2);
    line.before()
        .ifPresent(
            sample ->
                trace.add(
                    sample.timeMicros(),
                    sample.timeMicros(),
                    x(sample.timeMicros(), window),
                    y(sample.value() - drawn.limitCelsius())));
    for (int column = 0; column < line.columns(); column++) {
      if (!line.isEmpty(column)) {
        trace.add(
            line.firstMicros(column),
            line.lastMicros(column),
            (column + 0.5) * width / line.columns(),
            through(line, column, drawn.limitCelsius()));
      }
    }
    line.after()
        .ifPresent(
            sample ->
                trace.add(
                    sample.timeMicros(),
                    sample.timeMicros(),
                    x(sample.timeMicros(), window),
                    y(sample.value() - drawn.limitCelsius())));
    trace.finish();
  }

  private double x(long timeMicros, TripWindow window) {
    return (timeMicros - window.fromMicros()) * width / window.widthMicros();
  }

  /** From the first value over both extremes to the last: no spike is lost. */
  private double[] through(PixelLine line, int column, double limitCelsius) {
    return new double[] {
      y(line.first(column) - limitCelsius),
      y(line.least(column) - limitCelsius),
      y(line.greatest(column) - limitCelsius),
      y(line.last(column) - limitCelsius)
    };
  }

  private double y(double kelvinOverLimit) {
    double shown = limitY - kelvinOverLimit * height / (OVER_KELVIN + UNDER_KELVIN);
    return Math.clamp(shown, EDGE, height - EDGE);
  }
}
