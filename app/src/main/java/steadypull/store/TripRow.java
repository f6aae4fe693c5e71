package steadypull.store;

import java.security.SecureRandom;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.Update;
import steadypull.vehicle.VehicleJson;

/**
 * A trip's place in the library: the id that people use and the key that tables use.
 *
 * @param id see {@link TripSummary}
 * @param key primary key of the trip
 */
record TripRow(String id, long key) {
  /** An id that no trip of the library has. */
  static String freeId(Handle handle, Instant start) {
    SecureRandom random = new SecureRandom();
    String id = TripId.of(start, random);
    while (isTaken(handle, id)) {
      id = TripId.of(start, random);
    }
    return id;
  }

  /**
   * Adds a trip, inside the caller's transaction; its vehicle is now the last used.
   *
   * @param id free in this library
   * @param origin the trip's own id
   */
  static TripRow insert(Handle handle, NewTrip trip, String id, String origin) {
    Update insert = handle.createUpdate(Sql.of("insertTrip"));
    bindDetails(insert, trip.details())
        .bind("id", id)
        .bind("origin", origin)
        .bind("vehicleName", trip.vehicle().name())
        .bind("vehicleKey", vehicleKey(handle, VehicleJson.write(trip.vehicle())))
        .bind("startEpochMicros", ChronoUnit.MICROS.between(Instant.EPOCH, trip.start()))
        .bind("startOffsetSeconds", trip.offset().map(ZoneOffset::getTotalSeconds).orElse(null))
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

  /** Tells a trip that has ended a second time, for the day on which the first is damaged. */
  static void tellTwice(Handle handle, long tripKey) {
    handle.createUpdate(Sql.of("deleteTripTwin")).bind("tripKey", tripKey).execute();
    handle.createUpdate(Sql.of("insertTripTwin")).bind("tripKey", tripKey).execute();
  }

  /** Binds what people say of a trip. */
  static Update bindDetails(Update update, TripDetails details) {
    OptionalDouble celsius = details.outsideCelsius();
    return update
        .bind("label", details.label())
        .bind("note", details.note())
        .bind("tags", String.join("\n", details.tags()))
        .bind("fitted", details.fitted())
        .bind("outside", details.outside())
        .bind("outsideCelsius", celsius.isPresent() ? celsius.getAsDouble() : null);
  }

  /** Keeps who answered on a trip. */
  static void describe(Handle handle, long tripKey, LinkIdentity link) {
    handle
        .createUpdate(Sql.of("updateTripLink"))
        .bind("tripKey", tripKey)
        .bind("adapter", link.adapter())
        .bind("protocol", link.protocol())
        .bind("vehicleNumberHash", link.vehicleNumberHash())
        .execute();
  }

  /** The key of a vehicle's file as trips keep it; trips with the same file share it. */
  static long vehicleKey(Handle handle, String vehicleFile) {
    return findVehicleKey(handle, vehicleFile)
        .orElseGet(
            () -> {
              handle
                  .createUpdate(Sql.of("insertTripVehicle"))
                  .bind("vehicleFile", vehicleFile)
                  .execute();
              return findVehicleKey(handle, vehicleFile).orElseThrow();
            });
  }

  private static Optional<Long> findVehicleKey(Handle handle, String vehicleFile) {
    return handle
        .createQuery(Sql.of("selectTripVehicleKey"))
        .bind("vehicleFile", vehicleFile)
        .mapTo(Long.class)
        .findFirst();
  }

  static boolean isTaken(Handle handle, String id) {
    return handle.createQuery(Sql.of("countTripId")).bind("id", id).mapTo(Integer.class).one() > 0;
  }
}
