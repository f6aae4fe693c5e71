package steadypull.road.memory;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import steadypull.road.PassPoint;
import steadypull.road.RoadPass;
import steadypull.road.Route;
import steadypull.road.RoutePoint;
import steadypull.road.RouteSegment;
import steadypull.road.RouteSegmentBuilder;

/** Makes passes out of a route's points, as if somebody had driven it. Pure functions. */
final class RoutePasses {
  private static final double STEP_METRES = 25;

  /** Points of a file lie about so far beside the road, m (estimated). */
  private static final double POINT_METRES = 5;

  /** A road between two points bends aside by that share of their distance (estimated). */
  private static final double BENDS_ASIDE = 0.03;

  private static final double MOST_ASIDE_METRES = 30;

  /** Between two points farther apart nobody knows where the road leads, m (estimated). */
  private static final double LONGEST_LEG_METRES = 1000;

  /** The speed a route is thought to be driven at, m/s; only for the order of its points. */
  private static final double METRES_PER_SECOND = 20;

  /** Stands where no elevations are: an error beyond all that are told. */
  private static final ElevationGrades.Slope UNTOLD =
      new ElevationGrades.Slope(0, 2 * SightCosts.UNTOLD_GRADE_ERROR, 0);

  private RoutePasses() {}

  /**
   * A pass for each stretch without a gap that is too long to be told; where no slope is told its
   * error says so.
   */
  static List<RoadPass> of(Route route) {
    List<RoadPass> passes = new ArrayList<>();
    double begin = 0;
    for (RouteSegment segment : joined(route.segments())) {
      segment(segment, begin, passes);
      begin += segment.lengthMetres() + STEP_METRES;
    }
    return passes;
  }

  /**
   * Segments that go on near where the one before ended as one: a track breaks off in every tunnel,
   * and what is behind one is no end of the road.
   */
  private static List<RouteSegment> joined(List<RouteSegment> segments) {
    List<RouteSegment> joined = new ArrayList<>();
    RouteSegmentBuilder points = new RouteSegmentBuilder();
    RoutePoint last = segments.getFirst().point(0);
    for (RouteSegment segment : segments) {
      if (RouteSegment.of(last, segment.point(0)).lengthMetres() > LONGEST_LEG_METRES) {
        joined.add(points.build());
        points = new RouteSegmentBuilder();
      }
      segment.points().forEach(points::add);
      last = segment.point(segment.size() - 1);
    }
    joined.add(points.build());
    return joined;
  }

  private static void segment(RouteSegment segment, double begin, List<RoadPass> passes) {
    ElevationGrades grades = ElevationGrades.of(segment);
    List<PassPoint> points = new ArrayList<>();
    for (int leg = 0; leg + 1 < segment.size(); leg++) {
      double from = segment.distanceMetres(leg);
      double to = segment.distanceMetres(leg + 1);
      int steps = to - from > LONGEST_LEG_METRES ? 1 : (int) Math.ceil((to - from) / STEP_METRES);
      for (int step = 0; step < steps; step++) {
        double share = (double) step / steps;
        double metres = from + share * (to - from);
        points.add(point(grades, place(segment, leg, share), begin, metres));
      }
      if (to - from > LONGEST_LEG_METRES) {
        close(points, passes);
      }
    }
    int last = segment.size() - 1;
    if (last > 0) {
      points.add(point(grades, place(segment, last - 1, 1), begin, segment.lengthMetres()));
    }
    close(points, passes);
  }

  private static void close(List<PassPoint> points, List<RoadPass> passes) {
    if (points.size() > 1) {
      passes.add(new RoadPass(points));
    }
    points.clear();
  }

  private static PassPoint point(
      ElevationGrades grades, PassPoint.Place place, double begin, double metres) {
    ElevationGrades.Slope known = grades.at(metres).orElse(UNTOLD);
    return new PassPoint(
        (begin + metres) / METRES_PER_SECOND,
        begin + metres,
        Optional.of(place),
        known.heightMetres(),
        known.grade(),
        known.error());
  }

  private static PassPoint.Place place(RouteSegment segment, int leg, double share) {
    RoutePoint a = segment.point(leg);
    RoutePoint b = segment.point(leg + 1);
    double apart = segment.distanceMetres(leg + 1) - segment.distanceMetres(leg);
    double aside = Math.min(MOST_ASIDE_METRES, BENDS_ASIDE * apart);
    double east = Math.IEEEremainder(b.longitudeDegrees() - a.longitudeDegrees(), 360);
    return new PassPoint.Place(
        a.latitudeDegrees() + share * (b.latitudeDegrees() - a.latitudeDegrees()),
        a.longitudeDegrees() + share * east,
        POINT_METRES + aside);
  }
}
