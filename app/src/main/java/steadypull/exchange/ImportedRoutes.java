package steadypull.exchange;

import java.util.List;
import steadypull.road.Route;

/**
 * What a GPX file holds. Immutable.
 *
 * @param routes its routes and tracks in the order of the file, one or more
 * @param waypointsLeftOut how many single places it holds besides; a route does not need them
 * @param shortsLeftOut how many routes and tracks it holds with fewer than two points
 */
public record ImportedRoutes(List<Route> routes, long waypointsLeftOut, long shortsLeftOut) {
  public ImportedRoutes {
    routes = List.copyOf(routes);
  }
}
