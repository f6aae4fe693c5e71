package steadypull.report;

import java.util.Arrays;
import steadypull.compare.Comparison;
import steadypull.thermal.Belief;

/** How much cooler it is over time: plain what lasts, hatched on it what only delays. */
final class GainLane {
  private static final double BAR = 36;

  private final PicturePlan plan;
  private final Comparison comparison;

  GainLane(PicturePlan plan) {
    this.plan = plan;
    this.comparison = plan.words().comparison();
  }

  void draw() {
    plan.ground(PicturePlan.GAIN_TOP, PicturePlan.GAIN_HEIGHT, true);
    plan.name(plan.words().words().say("picture.gain"), PicturePlan.GAIN_TOP);
    double[] lasting = plan.shown(comparison.lastingGain().middle());
    double[] whole = ComparisonScales.gain(comparison);
    PictureScale scale =
        ComparisonScales.gain(comparison, PicturePlan.GAIN_TOP + 4, PicturePlan.GAIN_HEIGHT - 4);
    for (double value : scale.lines()) {
      plan.rule(scale.y(value), plan.words().figures().quantities().temperatureDifference(value));
    }
    split(scale, lasting, whole);
    plan.drawing()
        .line(PicturePlan.SOFT, 1, PicturePlan.LEFT, scale.y(0), PicturePlan.RIGHT, scale.y(0));
    comparison.settledGain().ifPresent(gain -> settled(gain, scale));
  }

  private void split(PictureScale scale, double[] lasting, double[] whole) {
    double[] x = plan.places(whole.length);
    double[] part = scale.heights(Arrays.copyOf(lasting, whole.length));
    double[] all = scale.heights(whole);
    plan.drawing().band(PicturePlan.LASTS, x, part, scale.heights(new double[whole.length]));
    plan.drawing().hatchedBand(PicturePlan.INK, x, all, part);
    plan.drawing().curve(PicturePlan.SOFT, 1, x, part);
    plan.drawing().curve(PicturePlan.INK, 1.8, x, all);
  }

  private void settled(Belief gain, PictureScale scale) {
    double end = scale.y(gain.middle());
    double zero = scale.y(0);
    double left = PicturePlan.SETTLED_X - BAR / 2;
    double top = Math.min(end, zero);
    double high = Math.abs(zero - end);
    plan.drawing().rectangle(PicturePlan.LASTS, left, top, BAR, high);
    plan.drawing().frame(PicturePlan.SOFT, 1.2, left, top, BAR, high);
    plan.drawing()
        .line(PicturePlan.SOFT, 1, PicturePlan.SETTLED_LEFT, zero, PicturePlan.WIDTH, zero);
  }
}
