package steadypull.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import steadypull.channel.QuantityFormat;
import steadypull.exchange.GpxFile;
import steadypull.exchange.TableException;
import steadypull.road.Route;
import steadypull.road.memory.RouteLine;

/** A route out of a file that is to be followed, and what is to be said of it. Stateless. */
final class FollowedRoute {
  private static final double ALL_ALONG = 0.995;
  private static final double NOWHERE = 0.005;

  private FollowedRoute() {}

  private record Followed(Route route, RouteLine line) {
    double gradedMetres() {
      return line.lengthMetres() * line.gradedShare();
    }
  }

  /**
   * Reads the route of a file that tells most; nothing but the file is touched.
   *
   * @param notes takes what is to be said of it
   */
  static RouteLine read(Path given, QuantityFormat format, PrintWriter notes)
      throws TableException, CommandFailure {
    List<Followed> found =
        GpxFile.read(given).routes().stream()
            .map(route -> new Followed(route, RouteLine.of(route)))
            .toList();
    Followed chosen =
        found.stream()
            .max(
                Comparator.comparingDouble(Followed::gradedMetres)
                    .thenComparingDouble(followed -> followed.line.lengthMetres()))
            .orElseThrow();
    if (chosen.line.lengthMetres() == 0) {
      throw new CommandFailure(
          ("Could not follow the route in %s: expected points at most 1 km apart, found none that"
                  + " are. Nothing was begun; take a track or a route with more points.")
              .formatted(shown(given)));
    }
    note(given, found.size(), chosen, format, notes);
    return chosen.line;
  }

  /** Refuses a route of which no grade is known. */
  static void requireElevations(RouteLine line, Path given) throws CommandFailure {
    if (line.gradedShare() <= NOWHERE) {
      throw new CommandFailure(
          ("Could not look ahead along the route in %s: expected elevations, since nobody else"
                  + " tells the grades here, found none that tell any. Take a route or track with"
                  + " elevations.")
              .formatted(shown(given)));
    }
  }

  private static void note(
      Path file, int routes, Followed chosen, QuantityFormat format, PrintWriter notes) {
    String name = Printable.line(chosen.route.name());
    notes.printf(
        "route%s: %s, %s%n",
        name.isBlank() ? "" : " " + name,
        format.distance(chosen.line.lengthMetres()),
        elevations(chosen.line.gradedShare()));
    if (routes > 1) {
      notes.printf("%s: of its %d routes this one tells most%n", shown(file), routes);
    }
    notes.flush();
  }

  private static String elevations(double share) {
    if (share >= ALL_ALONG) {
      return "with elevations all along";
    }
    return share <= NOWHERE
        ? "without elevations: it tells which way is meant; grades ahead come from roads driven"
            + " before, and are not known elsewhere"
        : "with elevations along %.0f %% of it; elsewhere grades ahead come from roads driven before"
            .formatted(100 * share);
  }

  private static String shown(Path file) {
    return Printable.line(file.toString());
  }
}
