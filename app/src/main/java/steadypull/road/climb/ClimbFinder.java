package steadypull.road.climb;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import steadypull.road.FlatGround;
import steadypull.road.PassPoint;
import steadypull.road.RoadPass;

/**
 * Finds the climbs of a drive. Stateless.
 *
 * <p>A climb rises 40 m or more over 500 m or more, by 2 % or more on average: less is over before
 * anything grows hot (our choice). A dip or a level stretch ends it if it costs more than {@link
 * RiseSearch} forgives. It starts and ends where the road has half the climb's own grade: of all
 * shares, half is the one at which an edge between level and steep stays where it is however the
 * grade was smoothed. On steep climbs, that is 3 %: gentler ends would be worth the name of a climb
 * by themselves.
 */
public final class ClimbFinder {
  /** The least rise of a climb, m. */
  public static final double LEAST_RISE_METRES = 40;

  /** The least length of a climb, m. */
  public static final double LEAST_LENGTH_METRES = 500;

  /** The least mean grade of a climb, a fraction. */
  public static final double LEAST_GRADE = 0.02;

  private static final double EDGE_SHARE = 0.5;
  private static final double STEEPEST_EDGE = 0.03;

  /** Steepest grades are told over 200 m: over less, they are mostly noise. */
  private static final int STEEPEST_STEPS = 10;

  /** So near the end of the record, nobody saw the road bend, steps. */
  private static final int RECORD_STEPS = 2;

  /**
   * A vehicle that turned around was at one place 200 m apart: two lanes and a receiver's error.
   */
  private static final double SAME_PLACE_METRES = 20;

  private static final int TURN_STEPS = 5;

  /** The grade's window reaches into the way back, so that the end lies before the turn, steps. */
  private static final int END_TO_TURN_STEPS = 15;

  private ClimbFinder() {}

  /** The climbs of a trip's passes, in the order of time; empty if there are none. */
  public static List<Climb> find(List<RoadPass> passes) {
    List<Climb> climbs = new ArrayList<>();
    for (List<DrivePoint> drive : DriveJoiner.join(passes)) {
      if (drive.getLast().metres() >= LEAST_LENGTH_METRES) {
        RoadProfile profile = new RoadProfile(drive);
        RiseSearch.rises(profile).forEach(rise -> climb(profile, rise).ifPresent(climbs::add));
      }
    }
    return List.copyOf(climbs);
  }

  private static Optional<Climb> climb(RoadProfile profile, Rise rough) {
    Rise rise = trimmed(profile, rough);
    double metres = (rise.to() - rise.from()) * RoadProfile.STEP_METRES;
    double height = profile.height(rise.to()) - profile.height(rise.from());
    boolean isClimb =
        metres >= LEAST_LENGTH_METRES
            && height >= LEAST_RISE_METRES
            && height / metres >= LEAST_GRADE;
    return isClimb ? Optional.of(described(profile, rise, metres, height)) : Optional.empty();
  }

  /** The part of a rise that gains most over its edge grade. */
  private static Rise trimmed(RoadProfile profile, Rise rough) {
    double edge = Math.min(STEEPEST_EDGE, EDGE_SHARE * gradeOfTheAverageMetre(profile, rough));
    Rise best = new Rise(rough.from(), rough.from());
    double bestGain = 0;
    int from = rough.from();
    double gain = 0;
    for (int step = rough.from() + 1; step <= rough.to(); step++) {
      gain += (profile.grade(step - 1) + profile.grade(step)) / 2 - edge;
      if (gain <= 0) {
        gain = 0;
        from = step;
      } else if (gain > bestGain) {
        bestGain = gain;
        best = new Rise(from, step);
      }
    }
    return best;
  }

  /** The mean grade, each metre of height counting alike, so that gentle ends count little. */
  private static double gradeOfTheAverageMetre(RoadProfile profile, Rise rise) {
    double squares = 0;
    double sum = 1e-9;
    for (int step = rise.from(); step <= rise.to(); step++) {
      double grade = Math.max(0, profile.grade(step));
      squares += grade * grade;
      sum += grade;
    }
    return squares / sum;
  }

  private static Climb described(RoadProfile profile, Rise rise, double metres, double height) {
    DrivePoint start = profile.pointAfter(rise.from());
    DrivePoint end = profile.pointBefore(rise.to());
    List<DrivePoint> points = profile.between(rise.from(), rise.to());
    return new Climb(
        start.seconds(),
        end.seconds(),
        start.tripMetres(),
        metres,
        height,
        steepest(profile, rise),
        end(profile, rise.from()),
        end(profile, rise.to()),
        points.stream().skip(1).mapToDouble(DrivePoint::gapSeconds).sum(),
        spots(points, rise.from() * RoadProfile.STEP_METRES, profile.height(rise.from())));
  }

  private static double steepest(RoadProfile profile, Rise rise) {
    double steepest = profile.grade(rise.from(), rise.to());
    for (int step = rise.from(); step + STEEPEST_STEPS <= rise.to(); step++) {
      steepest = Math.max(steepest, profile.grade(step, step + STEEPEST_STEPS));
    }
    return steepest;
  }

  private static List<Climb.Spot> spots(List<DrivePoint> points, double metres, double height) {
    List<Climb.Spot> spots = new ArrayList<>();
    for (DrivePoint point : points) {
      point
          .place()
          .ifPresent(
              place ->
                  spots.add(
                      new Climb.Spot(
                          point.metres() - metres,
                          point.height() - height,
                          place.latitudeDegrees(),
                          place.longitudeDegrees())));
    }
    return spots;
  }

  private static Climb.End end(RoadProfile profile, int step) {
    if (step < RECORD_STEPS || step >= profile.size() - RECORD_STEPS) {
      return Climb.End.RECORD;
    }
    for (int turn = step - END_TO_TURN_STEPS; turn <= step + END_TO_TURN_STEPS; turn++) {
      if (isTurn(profile, turn)) {
        return Climb.End.TURN;
      }
    }
    return Climb.End.ROAD;
  }

  private static boolean isTurn(RoadProfile profile, int step) {
    if (step < TURN_STEPS || step + TURN_STEPS >= profile.size()) {
      return false;
    }
    Optional<PassPoint.Place> before = profile.place(step - TURN_STEPS);
    Optional<PassPoint.Place> after = profile.place(step + TURN_STEPS);
    return before.isPresent()
        && after.isPresent()
        && metres(before.get(), after.get()) < SAME_PLACE_METRES;
  }

  private static double metres(PassPoint.Place from, PassPoint.Place to) {
    return FlatGround.around(from.latitudeDegrees(), from.longitudeDegrees())
        .spot(to.latitudeDegrees(), to.longitudeDegrees())
        .distanceTo(new FlatGround.Spot(0, 0));
  }
}
