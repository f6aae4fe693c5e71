package steadypull.road.grade;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.filtering.kalman.KalmanSmoother;
import org.hipparchus.filtering.kalman.ProcessEstimate;
import org.hipparchus.linear.LUDecomposer;

/**
 * The grade of a trip that is over: each second is told with what came after it in mind (smoother
 * of Rauch, Tung and Striebel, "Maximum likelihood estimates of linear dynamic systems", AIAA
 * Journal 3, 1965, 1445-1450). Memory does not grow with the trip, since what lies five minutes
 * ahead no longer tells anything. Stateless.
 */
final class GradeSmoother {
  private static final int PIECE_SECONDS = 1500;
  private static final int AHEAD_SECONDS = 300;
  private static final LUDecomposer DECOMPOSER = new LUDecomposer(1e-40);

  private GradeSmoother() {}

  /**
   * The grade of each second of an unbroken drive.
   *
   * @param seconds in the order of time, none more than 3 s behind the one before, one or more
   * @return as many, metres counted from the first
   */
  static List<GradeEstimate> smooth(List<RoadSecond> seconds) {
    return smoothDated(TurnsInTime.dated(seconds));
  }

  private static List<GradeEstimate> smoothDated(List<RoadSecond> seconds) {
    List<GradeEstimate> told = new ArrayList<>(seconds.size());
    boolean isAlongRoute = seconds.stream().anyMatch(each -> each.routeMetres().isPresent());
    GradeFilter before = new GradeFilter(GradeFilter.NOBODY, isAlongRoute);
    for (int from = 0; from < seconds.size(); from += PIECE_SECONDS) {
      int to = Math.min(seconds.size(), from + PIECE_SECONDS);
      int ahead = Math.min(seconds.size(), to + AHEAD_SECONDS);
      before = piece(before, seconds.subList(from, ahead), to - from, told);
    }
    return told;
  }

  /** Returns the filter as it stood at the last second wanted. */
  static GradeFilter piece(
      GradeFilter before, List<RoadSecond> seconds, int wanted, List<GradeEstimate> told) {
    KalmanSmoother smoother = new KalmanSmoother(DECOMPOSER);
    GradeFilter filter = new GradeFilter(before, smoother);
    seconds.subList(0, wanted).forEach(filter::accept);
    GradeFilter reached = new GradeFilter(filter);
    seconds.subList(wanted, seconds.size()).forEach(filter::accept);
    // what the smoother gives is a linked list: whoever asks it by number walks it each time
    tell(List.copyOf(smoother.backwardsSmooth()), seconds, wanted, told);
    return reached;
  }

  private static void tell(
      List<ProcessEstimate> steps, List<RoadSecond> seconds, int wanted, List<GradeEstimate> told) {
    int next = 0;
    for (int step = 0; step < steps.size() && next < wanted; step++) {
      boolean isLastOfItsMoment =
          step + 1 == steps.size() || steps.get(step + 1).getTime() > steps.get(step).getTime();
      if (isLastOfItsMoment && steps.get(step).getTime() >= seconds.get(next).seconds()) {
        told.add(driven(told, steps.get(step)));
        next++;
      }
    }
  }

  private static GradeEstimate driven(List<GradeEstimate> told, ProcessEstimate here) {
    if (told.isEmpty()) {
      return GradeFilter.told(here, 0);
    }
    GradeEstimate last = told.getLast();
    double speed = Math.max(0, here.getState().getEntry(GradeProcess.SPEED));
    return GradeFilter.told(here, last.metres() + speed * (here.getTime() - last.seconds()));
  }
}
