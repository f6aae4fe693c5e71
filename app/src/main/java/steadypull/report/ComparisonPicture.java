package steadypull.report;

import steadypull.compare.GainAt;

/**
 * Draws a comparison over the time from the onset: the load as proof that it was equal, both
 * temperatures, hollow before and solid after, with where they lie nine times in ten, and the gain,
 * plain where it lasts and hatched where it only delays. Read in grey as well as in colour.
 */
final class ComparisonPicture {
  private ComparisonPicture() {}

  /** The picture of a comparison; lanes of which nothing is known are empty. */
  static Markup of(ComparisonWords words) {
    PicturePlan plan = PicturePlan.of(words);
    new LoadLane(plan).draw();
    new TemperatureLane(plan).draw();
    new GainLane(plan).draw();
    times(plan);
    return plan.drawing().markup();
  }

  private static void times(PicturePlan plan) {
    ReportWords texts = plan.words().words();
    Drawing drawing = plan.drawing();
    double bottom = PicturePlan.GAIN_TOP + PicturePlan.GAIN_HEIGHT + 3;
    drawing.line(PicturePlan.SOFT, 1, PicturePlan.LEFT, 0, PicturePlan.LEFT, bottom);
    drawing.label(
        texts.say("picture.loadOn"),
        "small",
        Drawing.Anchor.RIGHT,
        PicturePlan.LEFT - 4,
        PicturePlan.TIMES_Y,
        90);
    for (GainAt at : plan.words().comparison().at()) {
      if (at.seconds() < plan.seconds()) {
        double x = plan.x(at.seconds());
        drawing.dotted(PicturePlan.SOFT, 0.8, x, PicturePlan.TEMPERATURE_TOP, bottom);
        drawing.label(
            texts.say("figure.seconds", Integer.toString(at.seconds())),
            "time",
            Drawing.Anchor.CENTRE,
            x,
            PicturePlan.TIMES_Y,
            44);
      }
    }
    int end = plan.seconds() - 1;
    boolean isTold = plan.words().comparison().at().stream().anyMatch(at -> at.seconds() == end);
    if (!isTold) {
      drawing.label(
          texts.say("figure.seconds", Integer.toString(end)),
          "small",
          Drawing.Anchor.RIGHT,
          PicturePlan.RIGHT,
          PicturePlan.TIMES_Y,
          60);
    }
    drawing.label(
        texts.say("picture.settled"),
        "time",
        Drawing.Anchor.CENTRE,
        PicturePlan.SETTLED_X,
        PicturePlan.TIMES_Y,
        PicturePlan.WIDTH - PicturePlan.SETTLED_LEFT);
  }
}
