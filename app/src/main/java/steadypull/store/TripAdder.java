package steadypull.store;

import java.util.UUID;
import org.jdbi.v3.core.Handle;
import steadypull.vehicle.Vehicle;
import steadypull.vehicle.VehicleJson;

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
    VehicleRows.save(handle, vehicle.name(), VehicleJson.write(vehicle));
  }

  /** Begins a trip that is new to every library. */
  public AddedTrip begin(NewTrip trip) {
    return begin(trip, UUID.randomUUID().toString());
  }

  /** Begins a trip that has an own id already, one that no trip of this library has. */
  AddedTrip begin(NewTrip trip, String origin) {
    String id = TripRow.freeId(handle, trip.start());
    return new AddedTrip(handle, TripRow.insert(handle, trip, id, origin));
  }
}
