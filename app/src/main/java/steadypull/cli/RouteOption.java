package steadypull.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Option;
import steadypull.channel.QuantityFormat;
import steadypull.exchange.GpxFile;
import steadypull.exchange.TableException;
import steadypull.road.Route;
import steadypull.road.memory.RouteLine;

/** A route that drives follow, as an option that several commands share. */
final class RouteOption {
  private static final double ALL_ALONG = 0.995;
  private static final double NOWHERE = 0.005;

  @Option(
      names = "--route",
      paramLabel = "FILE",
      description =
          "A route or track (GPX) that tells the road ahead while "
              + "the vehicle is on it; needs --receiver. It is not kept.")
  private @Nullable Path file;

  private record Followed(Route route, RouteLine line) {
    double gradedMetres() {
      return line.lengthMetres() * line.gradedShare();
    }
  }

  /**
   * Reads the route, if one was given; nothing but its file is touched.
   *
   * @param hasReceiver whether positions will be told
   * @param notes takes what is to be said of it
   */
  Optional<RouteLine> read(
      CommandLine command, boolean hasReceiver, QuantityFormat format, PrintWriter notes)
      throws TableException, CommandFailure {
    Path given = file;
    if (given == null) {
      return Optional.empty();
    }
    if (!hasReceiver) {
      throw new Misuse(
          command,
          "--receiver beside --route",
          "--route alone",
          "Name the satellite receiver: a route counts while the vehicle is on it");
    }
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
    return Optional.of(chosen.line);
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
