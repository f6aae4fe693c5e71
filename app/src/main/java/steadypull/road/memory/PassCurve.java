package steadypull.road.memory;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import steadypull.road.FlatGround;
import steadypull.road.PassPoint;
import steadypull.road.RoadPass;

/**
 * A pass whose every point has a place: where no receiver told one, in a tunnel, the straight line
 * between its ends stands in with an error that says so. Immutable.
 */
final class PassCurve {
  /** Points nearer to the one before tell nothing of a direction, m driven. */
  private static final double NEAREST_METRES = 8;

  /** Without a place for longer than that nobody knows where the road runs, m. */
  private static final double LONGEST_GAP_METRES = 4000;

  /** A road inside a gap bends aside from the straight line by that share (estimated). */
  private static final double BENDS_ASIDE = 0.1;

  /**
   * Two places farther apart than what was driven between them, but for this: a ferry, a tow, or a
   * receiver that jumped.
   */
  private static final double CARRIED_METRES = 25;

  private static final double CARRIED_SHARE = 1.15;

  /** Where the straight line is so much shorter than what was driven, nobody knows the way. */
  private static final double LEAST_STRAIGHT_SHARE = 0.85;

  /** A bend of that length may stand for the straight line. */
  private static final double LONGEST_BEND_METRES = 150;

  private final List<Spot> spots;

  /**
   * A point of the pass.
   *
   * @param seconds since the trip began
   * @param metres driven along the pass
   * @param latitudeDegrees WGS 84
   * @param longitudeDegrees WGS 84
   * @param errorMetres across the road
   * @param heading radians counter-clockwise from east
   * @param grade in the direction of travel, a fraction
   * @param gradeError a fraction
   */
  record Spot(
      double seconds,
      double metres,
      double latitudeDegrees,
      double longitudeDegrees,
      double errorMetres,
      double heading,
      double grade,
      double gradeError) {}

  private PassCurve(List<Spot> spots) {
    this.spots = List.copyOf(spots);
  }

  /** The curves of a pass; none if it has no two places, more if they are too far apart. */
  static List<PassCurve> of(RoadPass pass) {
    List<PassCurve> curves = new ArrayList<>();
    List<Spot> spots = new ArrayList<>();
    List<PassPoint> unplaced = new ArrayList<>();
    for (PassPoint point : pass.points()) {
      if (!spots.isEmpty() && point.metres() - lastMetres(spots, unplaced) < NEAREST_METRES) {
        continue;
      }
      if (point.place().isEmpty()) {
        unplaced.add(point);
        continue;
      }
      if (!spots.isEmpty() && !leadsTo(spots.getLast(), point, point.place().get())) {
        close(spots, curves);
      }
      bridge(spots, unplaced, point);
      spots.add(spot(point, point.place().get()));
      unplaced.clear();
    }
    close(spots, curves);
    return curves;
  }

  /** Whether the straight line stands for what was driven from a point to the next with a place. */
  private static boolean leadsTo(Spot from, PassPoint to, PassPoint.Place place) {
    double driven = to.metres() - from.metres();
    FlatGround.Spot there =
        FlatGround.around(from.latitudeDegrees(), from.longitudeDegrees())
            .spot(place.latitudeDegrees(), place.longitudeDegrees());
    double straight = Math.hypot(there.east(), there.north());
    double errors = 2 * (from.errorMetres() + place.errorMetres());
    boolean isStraight =
        driven <= LONGEST_BEND_METRES || straight + errors >= LEAST_STRAIGHT_SHARE * driven;
    return driven <= LONGEST_GAP_METRES
        && straight <= CARRIED_SHARE * driven + CARRIED_METRES + errors
        && isStraight;
  }

  private static double lastMetres(List<Spot> spots, List<PassPoint> unplaced) {
    return unplaced.isEmpty() ? spots.getLast().metres() : unplaced.getLast().metres();
  }

  private static void close(List<Spot> spots, List<PassCurve> curves) {
    if (spots.size() > 1) {
      curves.add(new PassCurve(headed(spots)));
    }
    spots.clear();
  }

  private static void bridge(List<Spot> spots, List<PassPoint> unplaced, PassPoint end) {
    if (spots.isEmpty()) {
      return;
    }
    Spot begin = spots.getLast();
    PassPoint.Place place = end.place().orElseThrow();
    double east = Math.IEEEremainder(place.longitudeDegrees() - begin.longitudeDegrees(), 360);
    for (PassPoint point : unplaced) {
      double share = (point.metres() - begin.metres()) / (end.metres() - begin.metres());
      double nearest = Math.min(point.metres() - begin.metres(), end.metres() - point.metres());
      spots.add(
          spot(
              point,
              new PassPoint.Place(
                  begin.latitudeDegrees()
                      + share * (place.latitudeDegrees() - begin.latitudeDegrees()),
                  begin.longitudeDegrees() + share * east,
                  place.errorMetres() + 10 + BENDS_ASIDE * nearest)));
    }
  }

  private static Spot spot(PassPoint point, PassPoint.Place place) {
    return new Spot(
        point.seconds(),
        point.metres(),
        place.latitudeDegrees(),
        place.longitudeDegrees(),
        place.errorMetres(),
        0,
        point.grade(),
        point.gradeError());
  }

  private static List<Spot> headed(List<Spot> spots) {
    List<Spot> headed = new ArrayList<>(spots.size());
    for (int i = 0; i < spots.size(); i++) {
      Spot before = spots.get(Math.max(0, i - 1));
      Spot after = spots.get(Math.min(spots.size() - 1, i + 1));
      FlatGround.Spot ahead =
          FlatGround.around(before.latitudeDegrees(), before.longitudeDegrees())
              .spot(after.latitudeDegrees(), after.longitudeDegrees());
      headed.add(headed(spots.get(i), Math.atan2(ahead.north(), ahead.east())));
    }
    return headed;
  }

  private static Spot headed(Spot spot, double heading) {
    return new Spot(
        spot.seconds(),
        spot.metres(),
        spot.latitudeDegrees(),
        spot.longitudeDegrees(),
        spot.errorMetres(),
        heading,
        spot.grade(),
        spot.gradeError());
  }

  /** The points in the order of travel, two or more. */
  List<Spot> spots() {
    return spots;
  }

  /** A part of it, from one point up to but without another, two or more. */
  PassCurve part(int from, int to) {
    return new PassCurve(spots.subList(from, to));
  }

  /**
   * The same line the other way: what was up is down. What it tells of that way is less sure, since
   * the two ways need not lie on the same slope.
   *
   * @param aside what the grade of the other way may differ, a fraction
   * @param asideMetres what its place may
   */
  PassCurve reversed(double aside, double asideMetres) {
    double seconds = spots.getFirst().seconds() + spots.getLast().seconds();
    double metres = spots.getFirst().metres() + spots.getLast().metres();
    List<Spot> back = new ArrayList<>(spots.size());
    for (Spot spot : spots) {
      back.add(
          new Spot(
              seconds - spot.seconds(),
              metres - spot.metres(),
              spot.latitudeDegrees(),
              spot.longitudeDegrees(),
              Math.hypot(spot.errorMetres(), asideMetres),
              spot.heading() + Math.PI,
              -spot.grade(),
              Math.hypot(spot.gradeError(), aside)));
    }
    Collections.reverse(back);
    return new PassCurve(back);
  }

  /** Between its points, everything in proportion. Metres beyond its ends give the ends. */
  Spot at(double metres) {
    int low = 0;
    int high = spots.size() - 1;
    while (high - low > 1) {
      int middle = (low + high) >>> 1;
      if (spots.get(middle).metres() <= metres) {
        low = middle;
      } else {
        high = middle;
      }
    }
    Spot a = spots.get(low);
    Spot b = spots.get(high);
    double share = Math.clamp((metres - a.metres()) / (b.metres() - a.metres()), 0, 1);
    double turned = Math.IEEEremainder(b.heading() - a.heading(), 2 * Math.PI);
    double east = Math.IEEEremainder(b.longitudeDegrees() - a.longitudeDegrees(), 360);
    return new Spot(
        between(a.seconds(), b.seconds(), share),
        between(a.metres(), b.metres(), share),
        between(a.latitudeDegrees(), b.latitudeDegrees(), share),
        a.longitudeDegrees() + share * east,
        between(a.errorMetres(), b.errorMetres(), share),
        a.heading() + share * turned,
        between(a.grade(), b.grade(), share),
        between(a.gradeError(), b.gradeError(), share));
  }

  private static double between(double a, double b, double share) {
    return a + share * (b - a);
  }
}
