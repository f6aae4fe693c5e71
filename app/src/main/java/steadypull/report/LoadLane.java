package steadypull.report;

import steadypull.channel.QuantityFormat;
import steadypull.compare.Comparison;
import steadypull.compare.LoadMatch;

/** The power of both sides, the line after within that before: as one where loads are equal. */
final class LoadLane {
  private static final double BEFORE_THICK = 6.4;
  private static final double AFTER_THICK = 1.8;
  private static final double LABEL_ROOM = 260;

  private final PicturePlan plan;

  LoadLane(PicturePlan plan) {
    this.plan = plan;
  }

  void draw() {
    plan.ground(0, PicturePlan.LOAD_HEIGHT, false);
    plan.name(plan.words().words().say("picture.load"), 0);
    Comparison comparison = plan.words().comparison();
    double[] before = plan.shown(comparison.beforeKilowatts().middle());
    double[] after = plan.shown(comparison.afterKilowatts().middle());
    PictureScale scale = ComparisonScales.load(comparison, 4, PicturePlan.LOAD_HEIGHT - 4);
    plan.hollow(scale.heights(before), BEFORE_THICK);
    plan.solid(scale.heights(after), AFTER_THICK);
    comparison.runs().load().ifPresent(this::label);
  }

  private void label(LoadMatch load) {
    QuantityFormat quantities = plan.words().figures().quantities();
    plan.drawing()
        .label(
            plan.words()
                .words()
                .say(
                    "picture.loads",
                    quantities.power(load.beforeKilowatts()),
                    quantities.power(load.afterKilowatts())),
            "small",
            Drawing.Anchor.RIGHT,
            PicturePlan.RIGHT - 4,
            PicturePlan.LOAD_HEIGHT - 9,
            LABEL_ROOM);
  }
}
