package steadypull.report;

import java.util.Arrays;
import steadypull.compare.Course;

/**
 * Where things stand in the picture of a comparison, px, and the strokes that its lanes share. One
 * use.
 *
 * @param words what is drawn
 * @param drawing on which
 * @param seconds how many are shown from the onset, at least 2
 */
record PicturePlan(ComparisonWords words, Drawing drawing, int seconds) {
  static final double WIDTH = 680;
  static final double LEFT = 100;
  static final double RIGHT = 590;
  static final double SETTLED_LEFT = 606;
  static final double SETTLED_X = 643;
  static final double LOAD_HEIGHT = 38;
  static final double TEMPERATURE_TOP = 44;
  static final double TEMPERATURE_HEIGHT = 172;
  static final double GAIN_TOP = 222;
  static final double GAIN_HEIGHT = 78;
  static final double TIMES_Y = 310;
  static final double NAME_ROOM = 76;

  static final String INK = "#10201c";
  static final String PAPER = "#ffffff";
  static final String SOFT = "#586760";
  static final String RULE = "#c4ccc4";
  static final String LANE = "#f2f4f0";
  static final String CEILING = "#9aa59d";
  static final String BAND_BEFORE = "#dde2dc";
  static final String BAND_AFTER = "#c3cbc2";
  static final String LASTS = "#aebbac";

  private static final double HEIGHT = 320;

  static PicturePlan of(ComparisonWords words) {
    return new PicturePlan(
        words,
        new Drawing(WIDTH, HEIGHT, words.words().say("picture.aria")),
        ComparisonScales.seconds(words.comparison()));
  }

  double x(int second) {
    return LEFT + (RIGHT - LEFT) * second / (seconds - 1.0);
  }

  /** The ground of a lane. */
  void ground(double top, double height, boolean hasSettled) {
    drawing.rectangle(LANE, LEFT, top, RIGHT - LEFT, height);
    if (hasSettled) {
      drawing.rectangle(LANE, SETTLED_LEFT, top, WIDTH - SETTLED_LEFT, height);
    }
  }

  /** The name of a lane. */
  void name(String text, double top) {
    drawing.label(text, "name", Drawing.Anchor.LEFT, 0, top + 10, LEFT - 4);
  }

  /** A line across a lane by which values are read, and its value. */
  void rule(double y, String text) {
    drawing.line(RULE, 0.7, LEFT, y, RIGHT, y);
    drawing.line(RULE, 0.7, SETTLED_LEFT, y, WIDTH, y);
    drawing.label(text, "small", Drawing.Anchor.RIGHT, LEFT - 5, y, 30);
  }

  /** The line of the side before. */
  void hollow(double[] y, double thick) {
    double[] heights = shown(y);
    drawing.curve(INK, thick, places(heights.length), heights);
    drawing.curve(PAPER, thick / 2, places(heights.length), heights);
  }

  /** The line of the side after. */
  void solid(double[] y, double thick) {
    double[] heights = shown(y);
    drawing.curve(INK, thick, places(heights.length), heights);
  }

  /** Where a line lies nine times in ten. */
  void band(String fill, Course course, PictureScale scale) {
    double[] high = shown(scale.heights(course.high()));
    drawing.band(fill, places(high.length), high, shown(scale.heights(course.low())));
  }

  /** As much of a line as is shown. */
  double[] shown(double[] values) {
    return Arrays.copyOf(values, Math.min(values.length, seconds));
  }

  double[] places(int count) {
    double[] places = new double[count];
    Arrays.setAll(places, this::x);
    return places;
  }
}
