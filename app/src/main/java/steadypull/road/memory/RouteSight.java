package steadypull.road.memory;

import java.util.List;
import java.util.OptionalDouble;
import steadypull.road.PositionFix;
import steadypull.road.RoadAhead;
import steadypull.road.RoadPass;
import steadypull.road.RoadSight;
import steadypull.road.Route;

/**
 * Looks ahead along one way that is known: an imported route. The way is followed in its order, so
 * that a place it passes twice is no parting of ways; where the vehicle is not on it in its
 * direction, it is followed backwards, with the opposite grades. It counts while the vehicle is on
 * it; beside it nothing is known, and when the vehicle comes back it counts again. Where neither
 * the route nor {@link #take} tells a grade, the look ahead ends. Pipeline thread only.
 */
public final class RouteSight implements RoadSight {
  private final RouteDirection forwards;
  private final RouteDirection backwards;

  private RouteSight(List<RoadPass> passes) {
    forwards = new RouteDirection(passes);
    backwards = new RouteDirection(backwards(passes));
  }

  /** The sight along a route that is followed with its own elevations. */
  public static RouteSight of(Route route) {
    return RouteLine.of(route).sight();
  }

  /** The sight along passes, one after the other. */
  static RouteSight of(List<RoadPass> passes) {
    return new RouteSight(passes);
  }

  /** The same passes as they are for somebody who drives them the other way. */
  static List<RoadPass> backwards(List<RoadPass> passes) {
    return passes.reversed().stream().map(RoadPass::backwards).toList();
  }

  /** Looks ahead with these grades of the same route from now on. */
  public void take(RouteLine.Grades grades) {
    forwards.take(grades.forwards());
    backwards.take(grades.backwards());
  }

  @Override
  public void fixed(PositionFix fix) {
    forwards.fixed(fix);
    backwards.fixed(fix);
  }

  @Override
  public void moved(double seconds, double metres) {
    forwards.moved(seconds, metres);
    backwards.moved(seconds, metres);
  }

  @Override
  public OptionalDouble routeHeight(PositionFix fix) {
    return (forwards.isThere() ? forwards : backwards).height(fix);
  }

  @Override
  public RoadAhead ahead() {
    RoadAhead ahead = forwards.ahead();
    return ahead instanceof RoadAhead.Unknown ? backwards.ahead() : ahead;
  }
}
