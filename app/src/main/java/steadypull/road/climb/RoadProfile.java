package steadypull.road.climb;

import java.util.List;
import java.util.Optional;
import steadypull.road.PassPoint;

/**
 * Heights along an unbroken drive at equal steps, and the grade over 400 m around each. Immutable.
 */
final class RoadProfile {
  /** As far apart as the points of a pass, m. */
  static final double STEP_METRES = 20;

  /**
   * The grade is looked at over 400 m: the smoothed grade of one second errs by 0.4 %, mostly from
   * one hundred metres to the next, and a tenth of that is left over 400 m (estimated). A climb's
   * ends do not move by it: see {@link ClimbFinder}.
   */
  private static final int HALF_WINDOW = 10;

  /** Near the ends of a drive the window is shorter, so that it lies evenly around its step. */
  private static final int LEAST_HALF_WINDOW = 3;

  private final List<DrivePoint> points;
  private final int[] before;
  private final double[] heights;
  private final double[] grades;

  /** The profile of a drive's points, two or more, some 40 m long or longer. */
  RoadProfile(List<DrivePoint> points) {
    this.points = List.copyOf(points);
    int size = (int) (points.getLast().metres() / STEP_METRES) + 1;
    before = new int[size];
    heights = new double[size];
    grades = new double[size];
    sampleHeights();
    for (int step = 0; step < size; step++) {
      int half = Math.clamp(Math.min(step, size - 1 - step), LEAST_HALF_WINDOW, HALF_WINDOW);
      grades[step] = grade(Math.max(0, step - half), Math.min(size - 1, step + half));
    }
  }

  private void sampleHeights() {
    int next = 0;
    for (int step = 0; step < heights.length; step++) {
      double metres = step * STEP_METRES;
      while (next + 2 < points.size() && points.get(next + 1).metres() <= metres) {
        next++;
      }
      DrivePoint here = points.get(next);
      DrivePoint there = points.get(next + 1);
      double share = (metres - here.metres()) / Math.max(1e-6, there.metres() - here.metres());
      before[step] = share >= 1 ? next + 1 : next;
      heights[step] = here.height() + share * (there.height() - here.height());
    }
  }

  /** How many steps there are. */
  int size() {
    return heights.length;
  }

  /** Height at a step, m above wherever. */
  double height(int step) {
    return heights[step];
  }

  /** Mean grade over 400 m around a step, less at the ends of the drive; a fraction. */
  double grade(int step) {
    return grades[step];
  }

  /** Mean grade between two steps, the first before the second; a fraction. */
  double grade(int from, int to) {
    return (heights[to] - heights[from]) / ((to - from) * STEP_METRES);
  }

  /** The last point at or before a step. */
  DrivePoint pointBefore(int step) {
    return points.get(before[step]);
  }

  /** The first point at or after a step. */
  DrivePoint pointAfter(int step) {
    DrivePoint point = pointBefore(step);
    return point.metres() >= step * STEP_METRES
        ? point
        : points.get(Math.min(points.size() - 1, before[step] + 1));
  }

  /** The places from one step to another, both included. */
  List<DrivePoint> between(int from, int to) {
    double begin = from * STEP_METRES;
    double end = to * STEP_METRES;
    return points.subList(before[from], Math.min(points.size(), before[to] + 2)).stream()
        .filter(point -> point.metres() >= begin && point.metres() <= end)
        .toList();
  }

  /** Where a step is, if both points around it are known. */
  Optional<PassPoint.Place> place(int step) {
    DrivePoint from = pointBefore(step);
    DrivePoint to = pointAfter(step);
    double share =
        (step * STEP_METRES - from.metres()) / Math.max(1e-6, to.metres() - from.metres());
    return from.place()
        .flatMap(start -> to.place().map(end -> between(start, end, Math.clamp(share, 0, 1))));
  }

  private static PassPoint.Place between(PassPoint.Place from, PassPoint.Place to, double share) {
    double east = Math.IEEEremainder(to.longitudeDegrees() - from.longitudeDegrees(), 360);
    return new PassPoint.Place(
        from.latitudeDegrees() + share * (to.latitudeDegrees() - from.latitudeDegrees()),
        Math.IEEEremainder(from.longitudeDegrees() + share * east, 360),
        Math.max(from.errorMetres(), to.errorMetres()));
  }
}
