package steadypull.ui;

import java.util.OptionalDouble;
import steadypull.drive.Trace;

/**
 * Turns heights of the road into places on the screen: here in the middle, what is behind measured,
 * what is ahead as far as it is known, else at the present grade and speed.
 *
 * @param pixelsPerMetre so that the highest and the lowest place stay inside the strip
 * @param ahead the road of the coming three minutes
 */
record RoadScale(double pixelsPerMetre, GroundAhead ahead) {
  /** x of the label of the grade ahead. */
  private static final double LABEL_X = 722;

  /** A line of text with a little room above. */
  private static final double ORIGIN_HEIGHT = 20;

  private static final double USUAL_PIXELS_PER_METRE = 0.09;
  private static final double ROOM_BELOW = 24;
  private static final double ROOM_ABOVE = 28;
  private static final double LABEL_CLEAR = 44;
  private static final double LABEL_LIFT = 12;

  /** Half of the label's width, in seconds: the ground must not run through it. */
  private static final double LABEL_HALF_SECONDS = 14;

  private static final int LABEL_LOOKS = 8;

  static RoadScale of(RoadFace face) {
    GroundAhead ahead = face.ground();
    double lowest = Math.min(0, ahead.lowestMetres());
    double highest = Math.max(0, ahead.highestMetres());
    Trace behind = face.state().behind();
    for (int point = 0; point < behind.size(); point++) {
      lowest = Math.min(lowest, behind.value(point));
      highest = Math.max(highest, behind.value(point));
    }
    double down = lowest < 0 ? ROOM_BELOW / -lowest : USUAL_PIXELS_PER_METRE;
    double up = highest > 0 ? ROOM_ABOVE / highest : USUAL_PIXELS_PER_METRE;
    return new RoadScale(Math.min(USUAL_PIXELS_PER_METRE, Math.min(down, up)), ahead);
  }

  /** y of a height relative to here. */
  double y(double metres) {
    return DriveGeometry.ROAD_NOW - metres * pixelsPerMetre;
  }

  /** y of the road ahead. */
  double aheadY(double seconds) {
    return y(ahead.metresAt(seconds));
  }

  /** Baseline of the label of the grade ahead at its x, over the line. */
  double labelBaseline(double labelX) {
    double middle = StripScale.seconds(labelX);
    double highest = Double.POSITIVE_INFINITY;
    for (int look = -LABEL_LOOKS; look <= LABEL_LOOKS; look++) {
      double moment = middle + LABEL_HALF_SECONDS * look / LABEL_LOOKS;
      highest = Math.min(highest, aheadY(Math.clamp(moment, 0, CourseWords.HORIZON_SECONDS)));
    }
    return highest - LABEL_LIFT;
  }

  /** Baseline of the word for where the ground ahead is known: on it, or over one that falls. */
  double originBaseline() {
    double end =
        StripScale.seconds(DriveGeometry.ROAD_ORIGIN_LEFT + DriveGeometry.ROAD_ORIGIN_WIDTH);
    double lowest = Double.NEGATIVE_INFINITY;
    for (int look = 0; look <= LABEL_LOOKS; look++) {
      lowest = Math.max(lowest, aheadY(end * look / LABEL_LOOKS));
    }
    return lowest + ORIGIN_HEIGHT <= DriveGeometry.ROAD_ORIGIN_BASELINE
        ? DriveGeometry.ROAD_ORIGIN_BASELINE
        : DriveGeometry.ROAD_ORIGIN_BASELINE_ABOVE;
  }

  /** The moment that the label of the grade ahead stands for, s from now. */
  static double labelSeconds() {
    return StripScale.seconds(LABEL_X);
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
