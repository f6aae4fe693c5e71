package steadypull.road.memory;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.OptionalDouble;
import steadypull.road.FlatGround;

/**
 * The last fixes of a receiver: which way the vehicle goes, and whether the place has jumped. What
 * walls reflect lies 10 to 30 m beside for some seconds; such a jump is taken out until it jumps
 * back. One thread.
 */
final class FixTrail {
  /** Over so many metres a direction is told. */
  private static final double BASE_METRES = 25;

  /** A receiver does not move so far by itself from one second to the next, m (estimated). */
  private static final double JUMP_METRES = 7;

  /** Nobody takes a bend faster than that with a trailer, m/s2 across (estimated). */
  private static final double ACROSS = 3;

  /** After that a reflection is taken for the truth, s (estimated). */
  private static final double LONGEST_REFLECTION_SECONDS = 30;

  private static final double FARTHEST_REFLECTION_METRES = 60;
  private static final double LONGEST_STEP_SECONDS = 3;

  /**
   * A fix.
   *
   * @param odometer metres driven until then
   */
  private record Mark(double seconds, double odometer, FlatGround.Spot spot) {}

  private final Deque<Mark> marks = new ArrayDeque<>();
  private double jumpedEast;
  private double jumpedNorth;
  private double jumpedSeconds = Double.NEGATIVE_INFINITY;

  /** Takes a fix and says where the vehicle is believed to be. */
  FlatGround.Spot accept(double seconds, double odometer, FlatGround.Spot told) {
    if (seconds - jumpedSeconds > LONGEST_REFLECTION_SECONDS) {
      settle();
    }
    FlatGround.Spot spot = corrected(told);
    Mark last = marks.peekLast();
    if (last != null && seconds - last.seconds > LONGEST_STEP_SECONDS) {
      settle();
      spot = told;
    } else if (last != null) {
      spot = follow(last, seconds, odometer, spot, told);
    }
    marks.addLast(new Mark(seconds, odometer, spot));
    while (marks.size() > 2 && odometer - second().odometer >= BASE_METRES) {
      marks.removeFirst();
    }
    return spot;
  }

  private FlatGround.Spot follow(
      Mark last, double seconds, double odometer, FlatGround.Spot spot, FlatGround.Spot told) {
    double driven = odometer - last.odometer;
    OptionalDouble heading = heading();
    double ahead = heading.isPresent() ? driven : 0;
    double east = last.spot.east() + ahead * Math.cos(heading.orElse(0));
    double north = last.spot.north() + ahead * Math.sin(heading.orElse(0));
    double beside = Math.hypot(spot.east() - east, spot.north() - north);
    if (heading.isEmpty() || beside <= JUMP_METRES + bend(driven, seconds - last.seconds)) {
      return spot;
    }
    boolean isSecond = jumpedEast != 0 || jumpedNorth != 0;
    jumpedEast += spot.east() - east;
    jumpedNorth += spot.north() - north;
    jumpedSeconds = seconds;
    if (isSecond || Math.hypot(jumpedEast, jumpedNorth) > FARTHEST_REFLECTION_METRES) {
      settle(); // it has jumped back, or it was none
      return told;
    }
    return corrected(told);
  }

  /** How far aside a bend may lead within a step, from the direction of the last metres. */
  private static double bend(double metres, double seconds) {
    double metresPerSecond = Math.max(1, metres / seconds);
    double turned = ACROSS / metresPerSecond * (BASE_METRES / 2 / metresPerSecond + seconds / 2);
    return metres * Math.min(2, turned);
  }

  private void settle() {
    if (jumpedEast != 0 || jumpedNorth != 0) {
      marks.clear();
    }
    jumpedEast = 0;
    jumpedNorth = 0;
    jumpedSeconds = Double.NEGATIVE_INFINITY;
  }

  private FlatGround.Spot corrected(FlatGround.Spot told) {
    return new FlatGround.Spot(told.east() - jumpedEast, told.north() - jumpedNorth);
  }

  private Mark second() {
    var all = marks.iterator();
    all.next();
    return all.next();
  }

  /** The direction of travel, radians counter-clockwise from east, or empty if it is not told. */
  OptionalDouble heading() {
    Mark first = marks.peekFirst();
    Mark last = marks.peekLast();
    if (first == null || last == null || last.odometer - first.odometer < BASE_METRES / 2) {
      return OptionalDouble.empty();
    }
    return OptionalDouble.of(
        Math.atan2(last.spot.north() - first.spot.north(), last.spot.east() - first.spot.east()));
  }

  /** Forgets the fixes: the ground they were told on is another one. */
  void restart() {
    marks.clear();
    settle();
  }
}
