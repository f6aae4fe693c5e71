package steadypull.road.grade;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import steadypull.road.FlatGround;
import steadypull.road.PositionFix;

/**
 * Takes out fixes that cannot be where a vehicle was, once its whole drive is known: those of a
 * receiver that stands still while the wheels turn, and those between a jump aside and the same
 * jump back. One drive, one thread.
 */
final class FixScreen {
  /**
   * A jump that is smaller is noise, m (estimated: four standard deviations of a poor receiver).
   */
  private static final double JUMP_METRES = 8;

  /** For each second without a fix the vehicle may be elsewhere than it was going, m. */
  private static final double JUMP_METRES_PER_SECOND = 3;

  private static final int LONGEST_STEP_SECONDS = 5;

  /** A receiver that was wrong for longer was right (estimated). */
  private static final int LONGEST_ASIDE_SECONDS = 120;

  /** A jump back is the same but for so much of it. */
  private static final double BACK_SHARE = 0.35;

  /** Velocities are told over so many seconds. */
  private static final int COURSE_SECONDS = 3;

  private static final double TURNING_WHEELS = 2;

  /**
   * Nobody is so near to where he was 10 s ago who drove 8 m/s all the time: on a circle with 3
   * m/s2 across it is half of what was driven.
   */
  private static final int STUCK_SECONDS = 10;

  private static final double STUCK_METRES_PER_SECOND = 8;
  private static final double STUCK_SHARE = 0.3;

  /** Two directions whose sum is shorter are more than 60 degrees apart: no course is told. */
  private static final double LEAST_COURSE = Math.sqrt(3);

  private final double[] speeds;
  private final double[] driven;

  /** Where a fix was told; any spot elsewhere. */
  private final FlatGround.Spot[] spots;

  private final boolean[] isTold;
  private final boolean[] isLeftOut;

  private record Jump(int at, double east, double north) {
    double size() {
      return Math.hypot(east, north);
    }

    boolean isTakenBackBy(Jump other) {
      return Math.hypot(east + other.east, north + other.north)
          < Math.max(JUMP_METRES, BACK_SHARE * size());
    }
  }

  private FixScreen(
      List<RoadSecond> seconds, List<Optional<PositionFix>> fixes, FlatGround ground) {
    int size = seconds.size();
    speeds = seconds.stream().mapToDouble(RoadSecond::metresPerSecond).toArray();
    driven = new double[size];
    spots = new FlatGround.Spot[size];
    isTold = new boolean[size];
    isLeftOut = new boolean[size];
    Arrays.fill(spots, new FlatGround.Spot(0, 0));
    for (int i = 0; i < size; i++) {
      driven[i] = (i == 0 ? 0 : driven[i - 1]) + speeds[i];
      if (fixes.get(i).isPresent()) {
        PositionFix fix = fixes.get(i).get();
        spots[i] = ground.spot(fix.latitudeDegrees(), fix.longitudeDegrees());
        isTold[i] = true;
      }
    }
  }

  /** The fixes that may be right; the others are empty. */
  static List<Optional<PositionFix>> believable(
      List<RoadSecond> seconds, List<Optional<PositionFix>> fixes) {
    Optional<PositionFix> first = fixes.stream().flatMap(Optional::stream).findFirst();
    if (first.isEmpty()) {
      return fixes;
    }
    FlatGround ground =
        FlatGround.around(first.get().latitudeDegrees(), first.get().longitudeDegrees());
    FixScreen screen = new FixScreen(seconds, fixes, ground);
    screen.leaveOutStuck();
    screen.leaveOutAside();
    List<Optional<PositionFix>> believable = new ArrayList<>(fixes);
    for (int i = 0; i < screen.isLeftOut.length; i++) {
      if (screen.isLeftOut[i]) {
        believable.set(i, Optional.empty());
      }
    }
    return believable;
  }

  private void leaveOutStuck() {
    for (int i = 1; i < spots.length; i++) {
      boolean isSame =
          speeds[i] > TURNING_WHEELS
              && isFixed(i)
              && isTold[i - 1]
              && spots[i].equals(spots[i - 1]);
      isLeftOut[i] = isSame || isStuck(i);
    }
  }

  private boolean isStuck(int at) {
    int before = at - STUCK_SECONDS;
    if (before < 0 || !isFixed(at) || !isTold[before]) {
      return false;
    }
    double metres = driven[at] - driven[before];
    double slowest = Arrays.stream(speeds, before + 1, at + 1).min().orElse(0);
    return slowest > STUCK_METRES_PER_SECOND
        && spots[at].distanceTo(spots[before]) < STUCK_SHARE * metres;
  }

  private boolean isFixed(int at) {
    return isTold[at] && !isLeftOut[at];
  }

  private void leaveOutAside() {
    List<Jump> jumps = jumps();
    int next = 0;
    while (next < jumps.size()) {
      Jump away = jumps.get(next);
      int back = next + 1;
      while (isSoon(jumps, away, back) && !away.isTakenBackBy(jumps.get(back))) {
        back++;
      }
      if (isSoon(jumps, away, back)) {
        leaveOut(away.at, jumps.get(back).at);
        next = back;
      } else {
        leaveOutBesideSilence(away.at);
      }
      next++;
    }
  }

  private static boolean isSoon(List<Jump> jumps, Jump away, int next) {
    return next < jumps.size() && jumps.get(next).at - away.at <= LONGEST_ASIDE_SECONDS;
  }

  private void leaveOut(int from, int end) {
    for (int i = from; i < end; i++) {
      isLeftOut[i] = true;
    }
  }

  /**
   * Where the other jump of two fell into a stretch without fixes, the side that soon ends in one
   * is left out.
   */
  private void leaveOutBesideSilence(int jump) {
    int from = jump;
    while (from > 0 && jump - from < LONGEST_ASIDE_SECONDS && !isSilent(from - 1)) {
      from--;
    }
    int end = jump;
    while (end < spots.length && end - jump < LONGEST_ASIDE_SECONDS && !isSilent(end)) {
      end++;
    }
    if (2 * (jump - from) <= end - jump) {
      leaveOut(from, jump);
    } else if (2 * (end - jump) <= jump - from) {
      leaveOut(jump, end);
    }
  }

  /** Whether a second lies in a longer stretch without fixes. */
  private boolean isSilent(int at) {
    int last = at;
    while (last >= 0 && !isTold[last]) {
      last--;
    }
    int next = at;
    while (next < spots.length && !isTold[next]) {
      next++;
    }
    return next - last - 1 > LONGEST_STEP_SECONDS;
  }

  private List<Jump> jumps() {
    List<Jump> jumps = new ArrayList<>();
    int last = -1;
    for (int i = 0; i < spots.length; i++) {
      if (isFixed(i)) {
        if (last >= 0 && i - last <= LONGEST_STEP_SECONDS) {
          Jump jump = jump(last, i);
          if (jump.size() > JUMP_METRES + JUMP_METRES_PER_SECOND * (i - last - 1)) {
            jumps.add(jump);
          }
        }
        last = i;
      }
    }
    return jumps;
  }

  /** From one fix to the next, less what was driven on the mean of the courses around. */
  private Jump jump(int from, int to) {
    FlatGround.Spot before = course(from - COURSE_SECONDS, from);
    FlatGround.Spot after = course(to, to + COURSE_SECONDS);
    double east = before.east() + after.east();
    double north = before.north() + after.north();
    double size = Math.hypot(east, north);
    double metres = driven[to] - driven[from];
    double movedEast = spots[to].east() - spots[from].east();
    double movedNorth = spots[to].north() - spots[from].north();
    if (size < LEAST_COURSE) {
      // a sharp turn or a standstill: it may be anywhere that the wheels could bring it
      double beyond = Math.max(0, 1 - metres / Math.max(1, Math.hypot(movedEast, movedNorth)));
      return new Jump(to, beyond * movedEast, beyond * movedNorth);
    }
    return new Jump(to, movedEast - metres * east / size, movedNorth - metres * north / size);
  }

  /**
   * The direction between two seconds as a vector of length 1, or of length 0 if it is not told.
   */
  private FlatGround.Spot course(int from, int to) {
    if (from < 0 || to >= spots.length || !isTold[from] || !isTold[to]) {
      return new FlatGround.Spot(0, 0);
    }
    double east = spots[to].east() - spots[from].east();
    double north = spots[to].north() - spots[from].north();
    double size = Math.hypot(east, north);
    return size < 1 ? new FlatGround.Spot(0, 0) : new FlatGround.Spot(east / size, north / size);
  }
}
