package steadypull.store;

import java.time.Instant;
import java.util.Optional;
import java.util.UUID;
import java.util.function.UnaryOperator;
import org.jdbi.v3.core.Handle;
import steadypull.vehicle.Vehicle;

/**
 * Adds finished trips and their vehicles inside one transaction of {@link TripLibrary#addTrips}.
 * One thread; of no use afterwards.
 */
public final class TripAdder {
  private final Handle handle;

  TripAdder(Handle handle) {
    this.handle = handle;
  }

  /** Keeps a vehicle in place of the one of the same name; it is now the last used. */
  public void save(Vehicle vehicle) {
    VehicleRows.save(handle, vehicle);
  }

  /** A vehicle as a trip of that start begins with it; see {@link KnownHeat#settingOut}. */
  public Vehicle settingOut(Vehicle vehicle, Instant start) {
    return HeatRows.settingOut(handle, vehicle, start);
  }

  /**
   * Takes the trip of a file; one that is here already, or was thrown away here, stays one.
   *
   * @param said what is said of it besides
   */
  public MergedTrip merge(PortableTrip trip, UnaryOperator<TripDetails> said)
      throws LibraryException {
    return new TripMerge(this, handle, said).take(trip);
  }

  /** Keeps a vehicle unless there is one of the same name. */
  public void saveIfNew(Vehicle vehicle) {
    if (VehicleRows.file(handle, vehicle.name()).isEmpty()) {
      save(vehicle);
    }
  }

  /** The id here of the trip with that own id, or empty if this library does not hold it. */
  public Optional<String> findOrigin(String origin) {
    return handle
        .createQuery(Sql.of("selectTripOfOrigin"))
        .bind("origin", origin)
        .mapTo(String.class)
        .findOne();
  }

  /** Whether no trip has that own id, not even one that was thrown away and can be had back. */
  public boolean isFreeOrigin(String origin) {
    return handle
        .createQuery(Sql.of("selectAnyTripOfOrigin"))
        .bind("origin", origin)
        .mapToMap()
        .findOne()
        .isEmpty();
  }

  /** Keeps a route unless it is there already; returns its id, the same in every library. */
  public String keep(RouteFile route) {
    return RouteRows.keep(handle, route);
  }

  /** Begins a trip that is new to every library. */
  public AddedTrip begin(NewTrip trip) {
    return begin(trip, UUID.randomUUID().toString());
  }

  /**
   * Begins a trip that has an own id already.
   *
   * @param origin the trip's own id; no trip of this library has it
   */
  public AddedTrip begin(NewTrip trip, String origin) {
    String id = TripRow.freeId(handle, trip.start());
    return new AddedTrip(handle, TripRow.insert(handle, trip, id, origin));
  }

  /**
   * Begins a trip that has an own id already, one that no trip of this library has.
   *
   * @param told what is known of it
   * @param vehicle as it was when the trip began
   * @param id free in this library
   */
  AddedTrip begin(TripSummary told, Vehicle vehicle, String id) {
    NewTrip trip =
        new NewTrip(
            vehicle,
            told.start(),
            told.offset(),
            told.details(),
            told.source(),
            told.softwareVersion());
    TripRow row = TripRow.insert(handle, trip, id, told.origin());
    TripRow.describe(handle, row.key(), told.link());
    return new AddedTrip(handle, row);
  }
}
