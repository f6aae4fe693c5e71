package steadypull.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import steadypull.exchange.GpxFile;
import steadypull.exchange.ImportedRoutes;
import steadypull.exchange.TableException;
import steadypull.road.Route;
import steadypull.store.RouteFile;

/** A GPX file on its way into the library: each route and track in it becomes a route. */
final class RouteImport {
  private RouteImport() {}

  /**
   * Reads a file.
   *
   * @param notes where it is said what is left out
   */
  static Taking open(Path file, PrintWriter notes) throws TableException {
    ImportedRoutes found = GpxFile.read(file);
    List<RouteFile> routes = found.routes().stream().map(RouteImport::kept).toList();
    return Taking.of(
        Taking.Kind.ROUTE,
        adder -> {
          note(Printable.line(file.toString()), found, notes);
          return routes.stream().map(adder::keep).toList();
        });
  }

  private static RouteFile kept(Route route) {
    return new RouteFile(route.name(), GpxFile.text(route));
  }

  private static void note(String file, ImportedRoutes found, PrintWriter notes) {
    if (found.waypointsLeftOut() > 0) {
      notes.printf("%s: waypoints are no route; left out %d.%n", file, found.waypointsLeftOut());
    }
    if (found.shortsLeftOut() > 0) {
      notes.printf(
          "%s: a route has two points or more; left out %d with fewer.%n",
          file, found.shortsLeftOut());
    }
  }
}
