package steadypull.road.memory;

import java.util.List;
import steadypull.road.PositionFix;
import steadypull.road.RoadAhead;
import steadypull.road.RoadPass;
import steadypull.road.RoadSight;
import steadypull.road.Route;

/**
 * Looks ahead along one way that is known: a route with elevations, or what a trip drove before.
 * The way is followed in its order, so that a place it passes twice is no parting of ways. Beside
 * it, and where it tells no elevation, nothing is known. Pipeline thread only.
 */
public final class RouteSight implements RoadSight {
  private final RoadMatcher matcher;

  private RouteSight(List<RoadPass> passes) {
    RoadMemory memory = new RoadMemory(RoadMemory.shelfInMemory());
    passes.forEach(memory::append);
    matcher = new RoadMatcher(memory);
  }

  /** The sight along an imported route. */
  public static RouteSight of(Route route) {
    return new RouteSight(RoutePasses.of(route));
  }

  /** The sight along what a trip drove before. */
  public static RouteSight of(List<RoadPass> passes) {
    return new RouteSight(List.copyOf(passes));
  }

  @Override
  public void fixed(PositionFix fix) {
    matcher.fixed(fix);
  }

  @Override
  public void moved(double seconds, double metres) {
    matcher.moved(seconds, metres);
  }

  @Override
  public RoadAhead ahead() {
    return matcher.ahead();
  }
}
