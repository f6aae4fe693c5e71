package steadypull.ui;

import steadypull.drive.TripPicture;
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
  private static final long LONGEST_SILENCE_MICROS = 15_000_000;
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

  void paint(TripPicture picture) {
    pen.fill(Token.GROUND, 0, 0, width, height);
    ceiling();
    picture.lines().stream()
        .filter(line -> picture.nearest().filter(line::equals).isEmpty())
        .forEach(line -> trace(line, Token.INK3, FAINT));
    picture.nearest().ifPresent(line -> trace(line, Token.INK, STRONG));
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

  private void trace(TripPicture.Line drawn, Token token, double strength) {
    pen.stroke(token, strength);
    PixelLine line = drawn.line();
    double[] x = new double[4 * line.columns()];
    double[] y = new double[4 * line.columns()];
    int count = 0;
    for (int column = 0; column < line.columns(); column++) {
      if (line.isEmpty(column)) {
        continue;
      }
      if (line.isGapBefore(column, LONGEST_SILENCE_MICROS)) {
        pen.polyline(x, y, count);
        count = 0;
      }
      for (double celsius : through(line, column)) {
        x[count] = (column + 0.5) * width / line.columns();
        y[count] = y(celsius - drawn.limitCelsius());
        count++;
      }
    }
    pen.polyline(x, y, count);
  }

  /** From the first value over both extremes to the last: no spike is lost. */
  private static double[] through(PixelLine line, int column) {
    return new double[] {
      line.first(column), line.least(column), line.greatest(column), line.last(column)
    };
  }

  private double y(double kelvinOverLimit) {
    double shown = limitY - kelvinOverLimit * height / (OVER_KELVIN + UNDER_KELVIN);
    return Math.clamp(shown, EDGE, height - EDGE);
  }
}
