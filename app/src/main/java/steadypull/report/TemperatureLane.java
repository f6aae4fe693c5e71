package steadypull.report;

import java.util.Optional;
import java.util.OptionalDouble;
import steadypull.compare.Comparison;
import steadypull.thermal.Belief;

/** Both temperatures under the limit, and where they settle. */
final class TemperatureLane {
  private static final double BEFORE_THICK = 4.4;
  private static final double AFTER_THICK = 2.6;
  private static final double SIDE_SHIFT = 10;
  private static final double NAME_SHIFT = 14;
  private static final double NAME_ROOM = 70;
  private static final int LONG_NAME = 12;

  private final PicturePlan plan;
  private final ComparisonWords words;
  private final Comparison comparison;
  private final PictureScale scale;

  TemperatureLane(PicturePlan plan) {
    this.plan = plan;
    this.words = plan.words();
    this.comparison = words.comparison();
    this.scale =
        ComparisonScales.temperature(
            words, PicturePlan.TEMPERATURE_TOP, PicturePlan.TEMPERATURE_HEIGHT);
  }

  void draw() {
    plan.ground(scale.top(), scale.height(), true);
    captions();
    for (double value : scale.lines()) {
      plan.rule(scale.y(value), words.figures().wholeTemperature(value, isAboveOutside()));
    }
    limit().ifPresent(this::ceiling);
    plan.band(PicturePlan.BAND_BEFORE, comparison.beforeCourse(), scale);
    plan.band(PicturePlan.BAND_AFTER, comparison.afterCourse(), scale);
    plan.hollow(scale.heights(comparison.beforeCourse().middle()), BEFORE_THICK);
    plan.solid(scale.heights(comparison.afterCourse().middle()), AFTER_THICK);
    names();
    settled(comparison.before().settles(), PicturePlan.PAPER, -SIDE_SHIFT);
    settled(comparison.after().settles(), PicturePlan.INK, SIDE_SHIFT);
  }

  private boolean isAboveOutside() {
    return comparison.isAboveOutside();
  }

  private void captions() {
    plan.name(words.channel(), scale.top());
    plan.drawing()
        .label(
            isAboveOutside()
                ? words.words().say("picture.above")
                : words.figures().quantities().outsideTemperatureUnit(),
            "small",
            Drawing.Anchor.LEFT,
            0,
            scale.top() + (words.channel().length() > LONG_NAME ? 37 : 24),
            PicturePlan.NAME_ROOM);
  }

  /** The limit on the scale of the lane, if it lies within it. */
  private Optional<Double> limit() {
    OptionalDouble limit = words.limitOnScale();
    return limit.isPresent() && limit.getAsDouble() < scale.high()
        ? Optional.of(limit.getAsDouble())
        : Optional.empty();
  }

  private void ceiling(double limit) {
    double y = scale.y(limit);
    double high = y - scale.top();
    double wide = PicturePlan.WIDTH - PicturePlan.SETTLED_LEFT;
    Drawing drawing = plan.drawing();
    drawing.hatchedRectangle(
        PicturePlan.CEILING,
        PicturePlan.LEFT,
        scale.top(),
        PicturePlan.RIGHT - PicturePlan.LEFT,
        high);
    drawing.hatchedRectangle(
        PicturePlan.CEILING, PicturePlan.SETTLED_LEFT, scale.top(), wide, high);
    drawing.line(PicturePlan.INK, 1.6, PicturePlan.LEFT, y, PicturePlan.RIGHT, y);
    drawing.line(PicturePlan.INK, 1.6, PicturePlan.SETTLED_LEFT, y, PicturePlan.WIDTH, y);
    drawing.label(
        words.limitLabel(),
        "small backed",
        Drawing.Anchor.LEFT,
        PicturePlan.LEFT + 5,
        high < NAME_SHIFT ? y + 9 : y - 9,
        260);
  }

  /** The hotter side is named above its line, the cooler one under its own. */
  private void names() {
    double[] before = plan.shown(comparison.beforeCourse().middle());
    double[] after = plan.shown(comparison.afterCourse().middle());
    int at = Math.min(before.length, after.length) * 2 / 3;
    if (at > 0 && !Double.isNaN(before[at]) && !Double.isNaN(after[at])) {
      boolean isCooler = after[at] <= before[at];
      name("picture.before", before[at], isCooler, at);
      name("picture.after", after[at], !isCooler, at);
    }
  }

  private void name(String key, double value, boolean isAbove, int at) {
    plan.drawing()
        .label(
            words.words().say(key),
            "name backed",
            Drawing.Anchor.CENTRE,
            plan.x(at) - NAME_ROOM / 2,
            scale.y(value) + (isAbove ? -NAME_SHIFT : NAME_SHIFT),
            NAME_ROOM);
  }

  private void settled(Optional<Belief> settles, String fill, double shift) {
    settles.ifPresent(
        belief -> {
          double centre = PicturePlan.SETTLED_X + shift;
          double top = scale.y(belief.high());
          double bottom = scale.y(belief.low());
          Drawing drawing = plan.drawing();
          drawing.line(PicturePlan.INK, 1.4, centre, top, centre, bottom);
          drawing.line(PicturePlan.INK, 1.4, centre - 5, top, centre + 5, top);
          drawing.line(PicturePlan.INK, 1.4, centre - 5, bottom, centre + 5, bottom);
          drawing.circle(PicturePlan.INK, fill, centre, scale.y(belief.middle()), 5);
        });
  }
}
