package steadypull.store;

import java.security.SecureRandom;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import steadypull.vehicle.VehicleJson;

/**
 * A trip's place in the library: the id that people use and the key that tables use.
 *
 * @param id see {@link TripSummary}
 * @param key primary key of the trip
 */
record TripRow(String id, long key) {
  /** Adds a trip, inside the caller's transaction; its vehicle is now the last used. */
  static TripRow insert(Handle handle, NewTrip trip) {
    String id = freeId(handle, trip.start());
    handle
        .createUpdate(Sql.of("insertTrip"))
        .bind("id", id)
        .bind("vehicleName", trip.vehicle().name())
        .bind("vehicleFile", VehicleJson.write(trip.vehicle()))
        .bind("startEpochMicros", ChronoUnit.MICROS.between(Instant.EPOCH, trip.start()))
        .bind("label", trip.label())
        .bind("source", trip.source())
        .bind("softwareVersion", trip.softwareVersion())
        .execute();
    handle.createUpdate(Sql.of("useVehicle")).bind("name", trip.vehicle().name()).execute();
    return find(handle, id).orElseThrow();
  }

  /** The trip of exactly that id, or empty if there is none. */
  static Optional<TripRow> find(Handle handle, String id) {
    return handle
        .createQuery(Sql.of("selectTripKey"))
        .bind("id", id)
        .mapTo(Long.class)
        .findOne()
        .map(key -> new TripRow(id, key));
  }

  private static String freeId(Handle handle, Instant start) {
    SecureRandom random = new SecureRandom();
    String id = TripId.of(start, random);
    while (find(handle, id).isPresent()) {
      id = TripId.of(start, random);
    }
    return id;
  }
}
