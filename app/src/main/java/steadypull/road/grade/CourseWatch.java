package steadypull.road.grade;

import java.util.ArrayDeque;
import java.util.Deque;
import steadypull.road.FlatGround;

/**
 * Watches a receiver's fixes for a turn on the spot or a hairpin: behind either the grade is
 * another. Pipeline thread only.
 */
final class CourseWatch {
  /** Legs of a course; shorter ones are the receiver's own wandering. */
  private static final double LEG_METRES = 8;

  /** Legs that turn by more point back, radians. */
  private static final double BACK = Math.toRadians(125);

  /** A turn takes a few legs; a road that bends more slowly is followed anyway. */
  private static final int LEGS = 5;

  private final Deque<Double> courses = new ArrayDeque<>();
  private double latitude = Double.NaN;
  private double longitude = Double.NaN;

  /** Takes a fix and says whether the vehicle has just turned back; once for each turn. */
  boolean hasTurned(double latitudeDegrees, double longitudeDegrees) {
    if (Double.isNaN(latitude)) {
      keep(latitudeDegrees, longitudeDegrees);
      return false;
    }
    FlatGround.Spot leg =
        FlatGround.around(latitude, longitude).spot(latitudeDegrees, longitudeDegrees);
    if (Math.hypot(leg.east(), leg.north()) < LEG_METRES) {
      return false;
    }
    keep(latitudeDegrees, longitudeDegrees);
    return turned(Math.atan2(leg.north(), leg.east()));
  }

  private boolean turned(double course) {
    boolean isBack =
        courses.stream()
            .anyMatch(before -> Math.abs(Math.IEEEremainder(course - before, 2 * Math.PI)) > BACK);
    if (isBack) {
      courses.clear();
    }
    courses.addLast(course);
    if (courses.size() > LEGS) {
      courses.removeFirst();
    }
    return isBack;
  }

  private void keep(double latitudeDegrees, double longitudeDegrees) {
    latitude = latitudeDegrees;
    longitude = longitudeDegrees;
  }
}
