package steadypull.store;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.jdbi.v3.core.Handle;
import steadypull.store.page.DatabasePages;

/** Writes what can be read of a damaged library into a new one beside it. One thread, one use. */
final class Salvage {
  private static final Duration NOBODY_ELSE_IS_THERE = Duration.ZERO;
  private static final double MICROS_PER_SECOND = 1e6;

  private final LibraryFinds finds;
  private final DatabasePages pages;
  private final boolean isLearnedKnown;
  private final List<LostPart> lostParts = new ArrayList<>();
  private final List<String> losses = new ArrayList<>();

  /**
   * A salvage.
   *
   * @param isLearnedKnown whether the list of trips from which roads were learned is whole
   */
  Salvage(LibraryFinds finds, DatabasePages pages, boolean isLearnedKnown) {
    this.finds = finds;
    this.pages = pages;
    this.isLearnedKnown = isLearnedKnown;
  }

  List<LostPart> lostParts() {
    return List.copyOf(lostParts);
  }

  /** What else is lost, in words. */
  List<String> losses() {
    return List.copyOf(losses);
  }

  /**
   * Writes the new library; if that fails, nothing of it stays.
   *
   * @param damaged the folder of the damaged library
   * @return the new folder
   */
  Path writeBeside(Path damaged) throws LibraryException {
    Path folder = freeFolder(damaged);
    try (LibraryConnection library = LibraryConnection.open(folder, NOBODY_ELSE_IS_THERE)) {
      for (LibraryRow.OfTrip trip : finds.trips()) {
        library.change("salvage trip " + trip.id(), handle -> add(handle, trip));
      }
      library.change("salvage vehicles, routes and roads", this::addTheRest);
      finds.tripsWithoutRow().forEach(this::tellLost);
      return folder;
    } catch (LibraryException | UncheckedIOException e) {
      remove(folder);
      throw e;
    }
  }

  /** Finds out what is lost, and writes nothing. */
  void look() {
    for (LibraryRow.OfTrip trip : finds.trips()) {
      TripSalvage salvage = new TripSalvage(finds, pages, trip);
      salvage.look();
      take(salvage);
    }
    finds.tripsWithoutRow().forEach(this::tellLost);
  }

  /** The folders of earlier salvages of a library that are still there, oldest first. */
  static List<Path> earlier(Path damaged) {
    List<Path> earlier = new ArrayList<>();
    for (int number = 1; Files.exists(folder(damaged, number)); number++) {
      earlier.add(folder(damaged, number));
    }
    return earlier;
  }

  private boolean add(Handle handle, LibraryRow.OfTrip trip) {
    TripSalvage salvage = new TripSalvage(finds, pages, trip);
    salvage.addTo(handle);
    take(salvage);
    return true;
  }

  private void take(TripSalvage salvage) {
    lostParts.addAll(salvage.lostParts());
    losses.addAll(salvage.losses());
  }

  private boolean addTheRest(Handle handle) {
    for (LibraryRow.OfVehicle vehicle : finds.vehicles()) {
      VehicleRows.save(handle, vehicle.name(), vehicle.vehicleFile());
      VehicleRows.keepEvidence(handle, vehicle.name(), vehicle.sensorEvidence());
    }
    finds
        .mappings()
        .forEach(
            (headerLine, mapping) ->
                handle
                    .createUpdate(Sql.of("saveMapping"))
                    .bind("headerLine", headerLine)
                    .bind("mapping", mapping)
                    .execute());
    for (LibraryRow.OfRoute route : finds.routes()) {
      handle
          .createUpdate(Sql.of("insertRoute"))
          .bind("id", route.id())
          .bind("name", route.name())
          .bind("routeFile", route.routeFile())
          .execute();
    }
    finds.climbs().forEach(climb -> ClimbRows.save(handle, climb));
    finds.comparisons().forEach(comparison -> ComparisonRows.save(handle, comparison));
    addRoads(handle);
    addHeat(handle);
    return true;
  }

  /** What a trip has told is the trip's: where a row is lost, the trip is looked at again. */
  private void addHeat(Handle handle) {
    finds
        .configurations()
        .forEach((name, all) -> all.forEach(each -> HeatRows.keep(handle, name, each)));
    finds
        .tripHeat()
        .forEach(
            each ->
                HeatRows.told(
                    handle, each.origin(), each.vehicleName(), each.start(), each.told()));
  }

  /** Where it is not known from which trips the roads were learned, none is learned twice. */
  private void addRoads(Handle handle) {
    RoadTiles tiles = new RoadTiles(handle);
    finds.roadTiles().forEach(tiles::save);
    finds.roadLearned().forEach((origin, passes) -> RoadRows.learned(handle, origin, passes));
    finds.quietPlaces().forEach(place -> RoadRows.keepQuiet(handle, place));
    if (!isLearnedKnown) {
      RoadRows.allLearned(handle);
    }
  }

  /** Without its row nobody can tell what the samples of a trip are samples of. */
  private void tellLost(long tripKey) {
    String id = finds.tripId(tripKey);
    OptionalDouble end =
        finds.segments(tripKey).stream()
            .mapToDouble(segment -> segment.lastMicros() / MICROS_PER_SECOND)
            .max();
    lostParts.add(
        LostPart.whole(id == null ? "a trip without its id, number " + tripKey : id, end));
  }

  private static Path freeFolder(Path damaged) {
    for (int number = 1; ; number++) {
      Path folder = folder(damaged, number);
      if (!Files.exists(folder)) {
        return folder;
      }
    }
  }

  private static Path folder(Path damaged, int number) {
    Path place = damaged.toAbsolutePath().normalize();
    return place.resolveSibling(place.getFileName() + "-salvaged-" + number);
  }

  private static void remove(Path folder) throws LibraryException {
    try {
      for (String name : LibraryFile.NAMES) {
        Files.deleteIfExists(folder.resolve(name));
      }
      Files.deleteIfExists(folder);
    } catch (IOException e) {
      throw LibraryFault.of("clear up after salvaging", folder, e);
    }
  }
}
