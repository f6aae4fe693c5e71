package steadypull.ui;

import java.util.OptionalDouble;
import steadypull.drive.Trace;

/**
 * Turns heights of the road into places on the screen: here in the middle, what is behind measured,
 * what is ahead at the present grade and speed.
 *
 * @param pixelsPerMetre so that the higher and the lower end stay inside the strip
 * @param aheadMetres height of the road in three minutes, relative to here
 */
record RoadScale(double pixelsPerMetre, double aheadMetres) {
  /** x of the label of the grade ahead. */
  private static final double LABEL_X = 722;

  private static final double USUAL_PIXELS_PER_METRE = 0.09;
  private static final double ROOM_BELOW = 24;
  private static final double ROOM_ABOVE = 28;
  private static final double LABEL_CLEAR = 44;
  private static final double LABEL_LIFT = 12;
  private static final double METRES_PER_SECOND = 1 / 3.6;
  private static final double PER_CENT = 0.01;

  static RoadScale of(RoadFace face) {
    double ahead = aheadMetres(face);
    double lowest = Math.min(0, ahead);
    double highest = Math.max(0, ahead);
    Trace behind = face.state().behind();
    for (int point = 0; point < behind.size(); point++) {
      lowest = Math.min(lowest, behind.value(point));
      highest = Math.max(highest, behind.value(point));
    }
    double down = lowest < 0 ? ROOM_BELOW / -lowest : USUAL_PIXELS_PER_METRE;
    double up = highest > 0 ? ROOM_ABOVE / highest : USUAL_PIXELS_PER_METRE;
    return new RoadScale(Math.min(USUAL_PIXELS_PER_METRE, Math.min(down, up)), ahead);
  }

  private static double aheadMetres(RoadFace face) {
    return face.state().gradePercent().orElse(0)
        * PER_CENT
        * face.state().speedKilometresPerHour().orElse(0)
        * METRES_PER_SECOND
        * CourseWords.HORIZON_SECONDS;
  }

  /** y of a height relative to here. */
  double y(double metres) {
    return DriveGeometry.ROAD_NOW - metres * pixelsPerMetre;
  }

  /** y of the road ahead. */
  double aheadY(double seconds) {
    return y(aheadMetres * seconds / CourseWords.HORIZON_SECONDS);
  }

  /** Baseline of the label of the grade ahead, over the line. */
  double labelBaseline() {
    double seconds =
        (LABEL_X - DriveGeometry.NOW)
            / (DriveGeometry.CHART_RIGHT - DriveGeometry.NOW)
            * CourseWords.HORIZON_SECONDS;
    return aheadY(seconds) - LABEL_LIFT;
  }

  /** x of the label of the road ahead: beside the mark of a crossing, never under it. */
  static double labelX(OptionalDouble secondsToCrossing) {
    if (secondsToCrossing.isEmpty()) {
      return LABEL_X;
    }
    double mark = StripScale.x(secondsToCrossing.getAsDouble());
    if (Math.abs(mark - LABEL_X) >= LABEL_CLEAR) {
      return LABEL_X;
    }
    return mark > LABEL_X ? mark - LABEL_CLEAR : mark + LABEL_CLEAR;
  }
}
