package steadypull.road.memory;

import java.util.List;
import java.util.OptionalDouble;
import steadypull.road.GradeProfile;
import steadypull.road.PositionFix;
import steadypull.road.RoadAhead;
import steadypull.road.RoadPass;

/** A route followed in one of its directions. Pipeline thread only. */
final class RouteDirection {
  private final RoadGraph way;
  private final RoadMatcher matcher;
  private final RouteHeights heights;
  private RoadGraph graded;

  /** Follows passes, one after the other. */
  RouteDirection(List<RoadPass> passes) {
    way = chain(passes);
    graded = way;
    matcher = new RoadMatcher(way);
    heights = new RouteHeights(passes);
  }

  /** The same passes give the same nodes, whatever their grades are. */
  static RoadGraph chain(List<RoadPass> passes) {
    RoadMemory memory = new RoadMemory(RoadMemory.shelfInMemory());
    passes.forEach(memory::append);
    return memory.graph();
  }

  /** Looks ahead with the grades of another graph from now on, which has the same nodes. */
  void take(RoadGraph grades) {
    graded = grades;
  }

  void fixed(PositionFix fix) {
    matcher.fixed(fix);
  }

  void moved(double seconds, double metres) {
    matcher.moved(seconds, metres);
  }

  /** Whether the vehicle is on the route in this direction, as far as anybody can tell. */
  boolean isThere() {
    return !(ahead() instanceof RoadAhead.Unknown);
  }

  /** The route's own height where a fix lies, m, while the vehicle is on a graded part of it. */
  OptionalDouble height(PositionFix fix) {
    return matcher.ahead(way) instanceof RoadAhead.Known known && known.certain().size() > 0
        ? heights.at(fix)
        : OptionalDouble.empty();
  }

  RoadAhead ahead() {
    return switch (matcher.ahead(graded)) {
      case RoadAhead.Unknown unknown -> unknown;
      case RoadAhead.Ungraded ungraded -> ungraded;
      case RoadAhead.Known known -> told(known);
    };
  }

  private RoadAhead told(RoadAhead.Known known) {
    GradeProfile certain = upToUntold(known.certain());
    boolean isWhole = certain.size() == known.certain().size();
    List<RoadAhead.Branch> branches =
        isWhole
            ? known.branches().stream()
                .map(branch -> new RoadAhead.Branch(branch.odds(), upToUntold(branch.profile())))
                .filter(branch -> branch.profile().size() > 0)
                .toList()
            : List.of();
    return certain.size() == 0 && branches.isEmpty()
        ? new RoadAhead.Ungraded()
        : new RoadAhead.Known(certain, branches, origin(certain));
  }

  /** Nodes without a grade have an error beyond all others; a piece that touches one has some. */
  private static GradeProfile upToUntold(GradeProfile profile) {
    int told = 0;
    while (told < profile.size() && profile.error(told) < RouteLine.LARGEST_ERROR) {
      told++;
    }
    return profile.first(told);
  }

  /** A piece whose error is not the route's own is known from before. */
  private RoadAhead.Origin origin(GradeProfile certain) {
    if (graded == way || !(matcher.ahead(way) instanceof RoadAhead.Known own)) {
      return RoadAhead.Origin.ROUTE;
    }
    int pieces = Math.min(certain.size(), own.certain().size());
    int driven = 0;
    for (int piece = 0; piece < pieces; piece++) {
      driven += certain.error(piece) == own.certain().error(piece) ? 0 : 1;
    }
    return driven == 0
        ? RoadAhead.Origin.ROUTE
        : driven == pieces ? RoadAhead.Origin.DRIVEN : RoadAhead.Origin.ROUTE_AND_DRIVEN;
  }
}
