package steadypull.report;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import steadypull.drive.TripPicture;
import steadypull.store.column.PixelLine;

/**
 * Draws a trip as lanes, one for each limited channel, the one that came nearest on top: every lane
 * reaches from 40 degrees under its limit to 8 over, so that gaps compare.
 */
final class TripLanes {
  static final int COLUMNS = 540;

  private static final double WIDTH = 680;
  private static final double LEFT = 130;
  private static final double LANE = 62;
  private static final double GAP = 4;
  private static final double UNDER_KELVIN = 40;
  private static final double OVER_KELVIN = 8;
  private static final double TIMES = 16;
  private static final double MICROS_PER_SECOND = 1e6;
  private static final double[] STEPS = {60, 120, 300, 600, 1200, 1800, 3600, 7200};
  private static final int MOST_MARKS = 10;

  private final ReportWords words;
  private final FigureText figures;
  private final TripPicture picture;
  private final List<TripPicture.Line> lines;
  private final Drawing drawing;

  private TripLanes(ReportWords words, FigureText figures, TripPicture picture) {
    this.words = words;
    this.figures = figures;
    this.picture = picture;
    this.lines = TripPeaks.nearestFirst(picture);
    this.drawing = new Drawing(WIDTH, lines.size() * (LANE + GAP) + TIMES, words.say("trip.aria"));
  }

  static Markup of(ReportWords words, FigureText figures, TripPicture picture) {
    TripLanes lanes = new TripLanes(words, figures, picture);
    for (int i = 0; i < lanes.lines.size(); i++) {
      lanes.lane(lanes.lines.get(i), i * (LANE + GAP));
    }
    lanes.times();
    return lanes.drawing.markup();
  }

  private void lane(TripPicture.Line shown, double top) {
    PictureScale scale = new PictureScale(top, LANE, -UNDER_KELVIN, OVER_KELVIN);
    double limit = scale.y(0);
    drawing.rectangle(PicturePlan.LANE, LEFT, top, COLUMNS, LANE);
    drawing.hatchedRectangle(PicturePlan.CEILING, LEFT, top, COLUMNS, limit - top);
    drawing.line(PicturePlan.INK, 1.4, LEFT, limit, LEFT + COLUMNS, limit);
    drawing.label(words.title(shown.channel()), "name", Drawing.Anchor.LEFT, 0, top + 12, LEFT - 6);
    drawing.label(
        words.say("picture.limit", figures.quantities().temperature(shown.limitCelsius())),
        "small",
        Drawing.Anchor.LEFT,
        0,
        top + 40,
        LEFT - 6);
    trace(shown, scale);
  }

  /** From the least to the greatest of each column, so that no spike is lost. */
  private void trace(TripPicture.Line shown, PictureScale scale) {
    PixelLine line = shown.line();
    int[] heard =
        IntStream.range(0, line.columns()).filter(column -> !line.isEmpty(column)).toArray();
    double[] x = Arrays.stream(heard).mapToDouble(column -> LEFT + column + 0.5).toArray();
    double[] high = new double[heard.length];
    double[] low = new double[heard.length];
    double[] last = new double[heard.length];
    for (int i = 0; i < heard.length; i++) {
      high[i] = scale.y(line.greatest(heard[i]) - shown.limitCelsius()) - 0.6;
      low[i] = scale.y(line.least(heard[i]) - shown.limitCelsius()) + 0.6;
      last[i] = scale.y(line.last(heard[i]) - shown.limitCelsius());
    }
    drawing.band(PicturePlan.INK, x, high, low);
    drawing.curve(PicturePlan.INK, 1.4, x, last);
  }

  private void times() {
    double seconds = picture.window().widthMicros() / MICROS_PER_SECOND;
    double step =
        Arrays.stream(STEPS)
            .filter(each -> seconds / each <= MOST_MARKS)
            .findFirst()
            .orElse(STEPS[STEPS.length - 1]);
    double bottom = lines.size() * (LANE + GAP);
    for (double at = 0; at <= seconds; at += step) {
      double x = LEFT + COLUMNS * at / seconds;
      drawing.dotted(PicturePlan.SOFT, 0.7, x, 0, bottom - GAP);
      drawing.label(
          figures.quantities().elapsed((long) at),
          "small",
          Drawing.Anchor.CENTRE,
          x,
          bottom + 5,
          48);
    }
  }
}
