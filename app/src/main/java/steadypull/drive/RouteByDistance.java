package steadypull.drive;

import java.util.List;
import steadypull.road.GradeProfile;
import steadypull.road.PositionFix;
import steadypull.road.RoadAhead;
import steadypull.road.RoadSight;
import steadypull.road.memory.RouteLine;

/**
 * Looks ahead along a route without any position: the drive begins at the route's first point, and
 * its {@link Odometer} tells how far it has come; what is wrong with that shows in the grades
 * ({@link PlaceByGrades}). While nobody tells a speed the vehicle counts as standing. Pipeline
 * thread only.
 */
final class RouteByDistance implements RoadSight {
  private static final double FARTHEST_METRES = 15_000;

  private final GradeProfile route;
  private final PlaceByGrades place;

  RouteByDistance(RouteLine line) {
    route = line.profile();
    place = new PlaceByGrades(route);
  }

  static boolean isTold(GradeProfile route, int piece) {
    return route.error(piece) < RouteLine.LARGEST_ERROR;
  }

  /** Positions are what this does without. */
  @Override
  public void fixed(PositionFix fix) {}

  @Override
  public void moved(double seconds, double metres) {
    place.moved(metres);
  }

  @Override
  public void climbing(double grade) {
    place.climbing(grade);
  }

  /** Metres of the route. */
  double metres() {
    return place.metres();
  }

  @Override
  public RoadAhead ahead() {
    int from = (int) Math.max(0, Math.round(place.metres() / route.pieceMetres()));
    if (from >= route.size()) {
      return new RoadAhead.Unknown();
    }
    GradeProfile ahead = upToUntold(route.from(from));
    return ahead.size() == 0
        ? new RoadAhead.Ungraded()
        : new RoadAhead.Known(ahead, List.of(), RoadAhead.Origin.ROUTE);
  }

  private static GradeProfile upToUntold(GradeProfile way) {
    int most = Math.min(way.size(), (int) (FARTHEST_METRES / way.pieceMetres()));
    int told = 0;
    while (told < most && isTold(way, told)) {
      told++;
    }
    return way.first(told);
  }
}
