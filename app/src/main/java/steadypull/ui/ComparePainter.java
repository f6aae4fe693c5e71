package steadypull.ui;

import java.util.Arrays;
import java.util.Optional;
import java.util.stream.IntStream;
import steadypull.compare.Comparison;
import steadypull.compare.Course;
import steadypull.compare.GainAt;
import steadypull.report.ComparisonScales;
import steadypull.report.ComparisonWords;
import steadypull.report.PictureScale;
import steadypull.thermal.Belief;

/**
 * Draws the lanes of a comparison over the time from the onset: load, both temperatures under the
 * limit, and the gain with what lasts and what only delays. One use.
 */
final class ComparePainter {
  private static final double LOAD_BEFORE = 8;
  private static final double LOAD_AFTER = 2.4;
  private static final double BEFORE_WIDTH = 6;
  private static final double AFTER_WIDTH = 4;
  private static final double HATCH_STEP = 8;
  private static final double FINE_STEP = 6;
  private static final double SIDE_SHIFT = 11;
  private static final double BAR = 44;
  private static final double CAP = 7;

  private final Pen pen;
  private final Comparison comparison;
  private final ComparisonWords words;
  private final int seconds;

  ComparePainter(Pen pen, ComparisonWords words) {
    this.pen = pen;
    this.words = words;
    this.comparison = words.comparison();
    this.seconds = ComparisonScales.seconds(comparison);
  }

  static double x(double second, int seconds) {
    double width = CompareGeometry.PLOT_RIGHT - CompareGeometry.PLOT_LEFT;
    return CompareGeometry.PLOT_LEFT + width * second / (seconds - 1.0);
  }

  static PictureScale loadScale(Comparison comparison) {
    return ComparisonScales.load(
        comparison, CompareGeometry.LOAD_TOP + 8, CompareGeometry.LOAD_HEIGHT - 8);
  }

  static PictureScale temperatureScale(ComparisonWords words) {
    return ComparisonScales.temperature(
        words, CompareGeometry.TEMPERATURE_TOP, CompareGeometry.TEMPERATURE_HEIGHT);
  }

  static PictureScale gainScale(Comparison comparison) {
    return ComparisonScales.gain(
        comparison, CompareGeometry.GAIN_TOP + 6, CompareGeometry.GAIN_HEIGHT - 10);
  }

  void paint() {
    load();
    temperatures();
    gain();
    times();
  }

  private void load() {
    PictureScale scale = loadScale(comparison);
    hollow(scale.heights(comparison.beforeKilowatts().middle()), LOAD_BEFORE);
    solid(scale.heights(comparison.afterKilowatts().middle()), LOAD_AFTER);
  }

  private void temperatures() {
    PictureScale scale = temperatureScale(words);
    for (double value : scale.lines()) {
      rule(scale.y(value));
    }
    words.limitOnScale().stream()
        .filter(limit -> limit < scale.high())
        .forEach(limit -> ceiling(scale.top(), scale.y(limit)));
    band(comparison.beforeCourse(), scale);
    band(comparison.afterCourse(), scale);
    hollow(scale.heights(comparison.beforeCourse().middle()), BEFORE_WIDTH);
    solid(scale.heights(comparison.afterCourse().middle()), AFTER_WIDTH);
    settled(comparison.before().settles(), scale, Token.SURFACE, -SIDE_SHIFT);
    settled(comparison.after().settles(), scale, Token.INK, SIDE_SHIFT);
  }

  private void rule(double y) {
    pen.line(Token.RULE, 1, CompareGeometry.PLOT_LEFT, y, CompareGeometry.PLOT_RIGHT, y);
    pen.line(Token.RULE, 1, CompareGeometry.SETTLED_LEFT, y, CompareGeometry.LANES_RIGHT, y);
  }

  private void ceiling(double top, double limit) {
    span(CompareGeometry.PLOT_LEFT, CompareGeometry.PLOT_RIGHT, top, limit);
    span(CompareGeometry.SETTLED_LEFT, CompareGeometry.LANES_RIGHT, top, limit);
  }

  private void span(double left, double right, double top, double limit) {
    hatch(Token.EDGE, 0.75, HATCH_STEP, left, top, right - left, limit - top);
    pen.line(Token.INK2, 2, left, limit, right, limit);
  }

  private void hatch(
      Token token, double opacity, double step, double x, double y, double wide, double high) {
    pen.within(
        x,
        y,
        wide,
        high,
        () -> {
          pen.faintStroke(token, opacity, 1.3);
          for (double from = x - high; from < x + wide; from += step * Math.sqrt(2)) {
            pen.context().strokeLine(from, y + high, from + high, y);
          }
        });
  }

  private void gain() {
    PictureScale scale = gainScale(comparison);
    for (double value : scale.lines()) {
      rule(scale.y(value));
    }
    double[] whole = scale.heights(ComparisonScales.gain(comparison));
    double[] part =
        Arrays.copyOf(
            scale.heights(ComparisonScales.shown(comparison.lastingGain().middle(), comparison)),
            whole.length);
    double[] base = new double[whole.length];
    Arrays.fill(base, scale.y(0));
    area(Token.TERRAIN, part, base);
    hatchedArea(whole, part);
    line(Token.TERRAIN_LINE, 2, part);
    line(Token.INK, 2.5, whole);
    comparison.settledGain().ifPresent(gain -> bar(scale.y(gain.middle()), scale.y(0)));
  }

  private void bar(double end, double zero) {
    double left = CompareGeometry.SETTLED_X - BAR / 2;
    double top = Math.min(end, zero);
    double high = Math.abs(zero - end);
    pen.fill(Token.TERRAIN, left, top, BAR, high);
    pen.stroke(Token.TERRAIN_LINE, 2);
    pen.context().strokeRect(left, top, BAR, high);
  }

  private void hatchedArea(double[] upper, double[] lower) {
    if (upper.length < 2) {
      return;
    }
    double[] x = outlineX(upper.length);
    double[] y = outlineY(upper, lower);
    pen.context().save();
    pen.context().beginPath();
    pen.context().moveTo(x[0], y[0]);
    for (int i = 1; i < x.length; i++) {
      pen.context().lineTo(x[i], y[i]);
    }
    pen.context().closePath();
    pen.context().clip();
    hatch(
        Token.INK,
        0.8,
        FINE_STEP,
        CompareGeometry.PLOT_LEFT,
        CompareGeometry.GAIN_TOP,
        CompareGeometry.PLOT_RIGHT - CompareGeometry.PLOT_LEFT,
        CompareGeometry.GAIN_HEIGHT);
    pen.context().restore();
  }

  private void times() {
    double bottom = CompareGeometry.GAIN_TOP + CompareGeometry.GAIN_HEIGHT;
    for (GainAt at : comparison.at()) {
      if (at.seconds() < seconds) {
        double x = x(at.seconds(), seconds);
        pen.stroke(Token.EDGE, 1, 2, 5);
        pen.context().strokeLine(x, CompareGeometry.TEMPERATURE_TOP, x, bottom + 4);
      }
    }
    pen.line(
        Token.INK2,
        1.5,
        CompareGeometry.PLOT_LEFT,
        CompareGeometry.LOAD_TOP,
        CompareGeometry.PLOT_LEFT,
        bottom);
  }

  private void band(Course course, PictureScale scale) {
    double[] high = scale.heights(ComparisonScales.shown(course.high(), comparison));
    double[] low = scale.heights(ComparisonScales.shown(course.low(), comparison));
    area(Token.FAN90, high, low);
  }

  private void area(Token token, double[] upper, double[] lower) {
    if (upper.length > 1) {
      pen.context().setFill(pen.colour(token));
      pen.context().fillPolygon(outlineX(upper.length), outlineY(upper, lower), 2 * upper.length);
    }
  }

  private double[] outlineX(int length) {
    return IntStream.range(0, 2 * length)
        .mapToDouble(i -> x(i < length ? i : 2 * length - 1 - i, seconds))
        .toArray();
  }

  private static double[] outlineY(double[] upper, double[] lower) {
    int length = upper.length;
    return IntStream.range(0, 2 * length)
        .mapToDouble(i -> i < length ? upper[i] : lower[2 * length - 1 - i])
        .toArray();
  }

  private void hollow(double[] y, double width) {
    line(Token.INK, width, y);
    line(Token.SURFACE, width / 2, y);
  }

  private void solid(double[] y, double width) {
    line(Token.INK, width, y);
  }

  /** Broken where nothing was heard. */
  private void line(Token token, double width, double[] y) {
    pen.stroke(token, width);
    pen.roundCaps();
    int length = Math.min(seconds, y.length);
    int from = 0;
    while (from < length) {
      int to = from;
      while (to < length && !Double.isNaN(y[to])) {
        to++;
      }
      int first = from;
      double[] x = IntStream.range(first, to).mapToDouble(i -> x(i, seconds)).toArray();
      pen.polyline(x, Arrays.copyOfRange(y, first, to), x.length);
      from = to + 1;
    }
  }

  private void settled(Optional<Belief> settles, PictureScale scale, Token fill, double shift) {
    settles.ifPresent(
        belief -> {
          double x = CompareGeometry.SETTLED_X + shift;
          double top = scale.y(belief.high());
          double bottom = scale.y(belief.low());
          pen.line(Token.INK, 2, x, top, x, bottom);
          pen.line(Token.INK, 2, x - CAP, top, x + CAP, top);
          pen.line(Token.INK, 2, x - CAP, bottom, x + CAP, bottom);
          pen.dot(fill, Token.INK, x, scale.y(belief.middle()), CAP);
        });
  }
}
