package steadypull.drive;

import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.atomic.AtomicReference;
import steadypull.road.PositionFix;
import steadypull.road.RoadAhead;
import steadypull.road.RoadPass;
import steadypull.road.RoadSight;
import steadypull.road.memory.RoadMemory;
import steadypull.road.memory.RouteLine;
import steadypull.road.memory.RouteSight;
import steadypull.road.memory.TileKey;

/**
 * Looks ahead along a route while the vehicle is on it, and with what is remembered of roads
 * elsewhere. The route says which way is taken; the grade of each piece comes from whoever errs
 * less there, the route's elevations or those who drove before. So a route without elevations still
 * tells which of the remembered ways is meant. Pipeline thread only, but for the reading.
 */
final class RouteAndMemory implements RoadSight {
  private final RouteLine line;
  private final RouteSight route;
  private final RememberedRoad memory;
  private final LoadedTiles gradedBy = new LoadedTiles();
  private final AtomicReference<Optional<RouteLine.Grades>> grades =
      new AtomicReference<>(Optional.empty());

  /** Follows a route, and remembers what that reads. */
  RouteAndMemory(RouteLine line, RememberedRoad.Reading reading) {
    this.line = line;
    this.route = line.sight();
    this.memory =
        new RememberedRoad(
            (place, metres, taker) ->
                reading.read(
                    place,
                    metres,
                    tiles -> {
                      taker.accept(tiles);
                      grade(tiles);
                    }));
  }

  /** On the thread that reads; tiles are read often and seldom others. */
  private synchronized void grade(Map<TileKey, byte[]> tiles) {
    if (!gradedBy.take(tiles, false).isEmpty()) {
      grades.set(Optional.of(line.gradedBy(new RoadMemory(gradedBy))));
    }
  }

  @Override
  public void fixed(PositionFix fix) {
    memory.fixed(fix);
    grades.getAndSet(Optional.empty()).ifPresent(route::take);
    route.fixed(fix);
  }

  @Override
  public void moved(double seconds, double metres) {
    memory.moved(seconds, metres);
    route.moved(seconds, metres);
  }

  @Override
  public void driven(RoadPass piece) {
    memory.driven(piece);
  }

  @Override
  public boolean learnsOnTheWay() {
    return true;
  }

  @Override
  public OptionalDouble routeHeight(PositionFix fix) {
    return route.routeHeight(fix);
  }

  @Override
  public RoadAhead ahead() {
    return switch (route.ahead()) {
      case RoadAhead.Unknown() -> memory.ahead();
      case RoadAhead.Ungraded ungraded ->
          memory.ahead() instanceof RoadAhead.Known known ? known : ungraded;
      case RoadAhead.Known known -> known.certain().size() > 0 ? known : better(known);
    };
  }

  /** Where the route itself is in doubt about the lap. */
  private RoadAhead better(RoadAhead.Known doubtful) {
    return memory.ahead() instanceof RoadAhead.Known known ? known : doubtful;
  }
}
