package steadypull.road.grade;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import steadypull.road.PassPoint;
import steadypull.road.PositionFix;
import steadypull.road.RoadPass;

/**
 * Makes passes out of a trip that is still under way, piece by piece: each is told when a minute
 * more has been driven, or at once when the vehicle turns back, because then it comes along the
 * same road. A piece begins with the last point of the one before. Keeps some four minutes of
 * driving. Pipeline thread only.
 */
public final class PassPieces {
  private static final int PIECE_SECONDS = 120;

  /** What comes later tells most about a second within a minute. */
  private static final int AHEAD_SECONDS = 60;

  private static final int BEHIND_SECONDS = 60;

  /** Points lie no closer together, m. */
  private static final double POINT_METRES = 20;

  private final List<RoadSecond> seconds = new ArrayList<>();
  private final List<Optional<PositionFix>> fixes = new ArrayList<>();
  private GradeFilter before = new GradeFilter();
  private Optional<GradeEstimate> lastTold = Optional.empty();
  private Optional<PassPoint> lastPoint = Optional.empty();

  /** How many of the seconds were told already. */
  private int done;

  /**
   * Takes a second of driving.
   *
   * @param fix that came in it
   * @return the pass over what has become certain enough; one with a place or none
   */
  public Optional<RoadPass> accept(RoadSecond second, Optional<PositionFix> fix) {
    if (!seconds.isEmpty()
        && second.seconds() - seconds.getLast().seconds() > GradeFilter.LONGEST_STEP_SECONDS) {
      restart();
    }
    seconds.add(second);
    fixes.add(fix);
    int open = seconds.size() - done;
    if (second.turn().isPresent() && open > 1) {
      return piece(open);
    }
    return open < PIECE_SECONDS + AHEAD_SECONDS ? Optional.empty() : piece(PIECE_SECONDS);
  }

  /** Begins anew after a gap. */
  public void restart() {
    seconds.clear();
    fixes.clear();
    done = 0;
    before = new GradeFilter();
    lastTold = Optional.empty();
    lastPoint = Optional.empty();
  }

  private Optional<RoadPass> piece(int count) {
    int end = done + count;
    List<PassPoint> points = new ArrayList<>();
    if (fixes.subList(done, end).stream().anyMatch(Optional::isPresent)) {
      List<GradeEstimate> grades = grades(count);
      List<Optional<PassPoint.Place>> places = PlaceSmoother.smooth(seconds, fixes);
      lastPoint.ifPresent(points::add);
      for (int i = 0; i < count; i++) {
        add(grades.get(i), places.get(done + i), points);
      }
    } else {
      seconds.subList(done, end).forEach(before::accept);
    }
    done = Math.min(end, BEHIND_SECONDS);
    seconds.subList(0, end - done).clear();
    fixes.subList(0, end - done).clear();
    lastPoint = points.isEmpty() ? Optional.empty() : Optional.of(points.getLast());
    return points.size() < 2 ? Optional.empty() : Optional.of(new RoadPass(points));
  }

  /** The grades of so many seconds, which the filter has then seen. */
  private List<GradeEstimate> grades(int count) {
    List<GradeEstimate> told = new ArrayList<>();
    lastTold.ifPresent(told::add);
    int first = told.size();
    before = GradeSmoother.piece(before, seconds.subList(done, seconds.size()), count, told);
    lastTold = Optional.of(told.getLast());
    return told.subList(first, told.size());
  }

  private static void add(
      GradeEstimate grade, Optional<PassPoint.Place> place, List<PassPoint> points) {
    if (points.isEmpty() || grade.metres() - points.getLast().metres() >= POINT_METRES) {
      points.add(
          new PassPoint(
              grade.seconds(),
              grade.metres(),
              place,
              grade.heightMetres(),
              grade.grade(),
              grade.error()));
    }
  }
}
