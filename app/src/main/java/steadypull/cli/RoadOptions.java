package steadypull.cli;

import java.nio.file.Path;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import steadypull.drive.ReplayRoads;
import steadypull.exchange.TableException;
import steadypull.road.RoadSight;
import steadypull.road.memory.RouteLine;
import steadypull.store.LibraryException;
import steadypull.store.TripLibrary;

/** What a trip that is run again may know of the road ahead. */
final class RoadOptions {
  @Option(
      names = "--route",
      paramLabel = "R.gpx",
      converter = PlainText.Place.class,
      description =
          "A route or track (GPX) with elevations that tells the road ahead, in place of what the"
              + " trip was told on its drive. A table without positions starts at its first point;"
              + " its speed tells how far it has come.")
  private @Nullable Path route;

  @Option(
      names = "--no-memory",
      description =
          "Goes without anything known of roads: what the trip was told on its drive, and what the"
              + " library remembers for a table with positions.")
  private boolean withoutMemory;

  /**
   * Who knows the road on a trip of the library; empty where what it was told on its drive counts.
   * The library may have learned from the trip itself, so it is not asked.
   */
  Optional<RoadSight> ofTrip(SteadypullCommand main, boolean hasPositions)
      throws TableException, CommandFailure {
    if (route == null) {
      return withoutMemory ? Optional.of(ReplayRoads.nothing()) : Optional.empty();
    }
    RouteLine line = FollowedRoute.read(route, main.format(), main.err());
    FollowedRoute.requireElevations(line, route);
    return Optional.of(
        !hasPositions
            ? byDistance(main, line)
            : withoutMemory ? ReplayRoads.alongOnly(line) : ReplayRoads.along(line));
  }

  /** Whether what the library remembers counts on a table's drive. */
  boolean remembers(boolean hasPositions) {
    return hasPositions && !withoutMemory;
  }

  /** Who knows the road on a table's drive where the library does not count. */
  RoadSight ofTable(SteadypullCommand main, boolean hasPositions)
      throws TableException, CommandFailure {
    if (route == null) {
      return ReplayRoads.nothing();
    }
    RouteLine line = FollowedRoute.read(route, main.format(), main.err());
    FollowedRoute.requireElevations(line, route);
    return hasPositions ? ReplayRoads.alongOnly(line) : byDistance(main, line);
  }

  /**
   * Who knows the road on the drive of a table with positions, with what the library remembers.
   *
   * @param library open as long as the table is run
   */
  RoadSight ofTable(SteadypullCommand main, Path table, TripLibrary library)
      throws TableException, CommandFailure, LibraryException {
    TableImport.known(table, library)
        .ifPresent(
            trip ->
                main.err()
                    .printf(
                        "the library knows this table as trip %s: what it remembers of the road is"
                            + " partly this drive's own; --no-memory goes without%n",
                        trip.id()));
    return route == null
        ? ReplayRoads.remembered(library.roads())
        : ReplayRoads.alongRemembering(
            FollowedRoute.read(route, main.format(), main.err()), library.roads());
  }

  private static RoadSight byDistance(SteadypullCommand main, RouteLine line) {
    main.err()
        .println(
            "no positions: the drive is taken to begin at the route's first point; its speed tells"
                + " how far it has come, half a unit added where whole km/h are told, and grades"
                + " that it shows correct that");
    main.err().flush();
    return ReplayRoads.byDistance(line);
  }
}
