package steadypull.store;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import java.util.regex.Pattern;
import org.jdbi.v3.core.Handle;
import steadypull.store.MergedTrip.Way;
import steadypull.vehicle.Vehicle;

/**
 * Takes a trip that came as a file into a library, inside somebody else's transaction. A trip is
 * known by its own id, so that the same file twice is one trip.
 */
final class TripMerge {
  /** An id from elsewhere becomes part of file names here, so it must have our own form. */
  private static final Pattern ID = Pattern.compile("[0-9]{8}T[0-9]{6}Z-[a-z0-9]{4}");

  private final TripAdder adder;
  private final Handle handle;

  /** What is said of the trip besides, on top of everything else. */
  private final UnaryOperator<TripDetails> said;

  TripMerge(TripAdder adder, Handle handle, UnaryOperator<TripDetails> said) {
    this.adder = adder;
    this.said = said;
    this.handle = handle;
  }

  MergedTrip take(PortableTrip trip) throws LibraryException {
    Optional<Known> known = known(trip.summary().origin());
    return known.isPresent() ? join(known.get(), trip) : add(trip);
  }

  private Optional<Known> known(String origin) {
    return handle
        .createQuery(Sql.of("selectAnyTripOfOrigin"))
        .bind("origin", origin)
        .map(
            (row, context) ->
                new Known(row.getLong("trip_key"), row.getString("id"), row.getInt("removed") != 0))
        .findOne();
  }

  private MergedTrip join(Known known, PortableTrip trip) {
    if (known.isRemoved) {
      handle.createUpdate(Sql.of("bringBack")).bind("tripKey", known.key).execute();
    }
    TripSummary here = new TripReader(handle).summaries(known.id).getFirst();
    TwoTellings tellings = new TwoTellings(here.details(), trip.summary().details());
    describe(known.id, said.apply(tellings.together()));
    TripRow.tellTwice(handle, known.key);
    List<String> kept = new ArrayList<>(tellings.contradictions());
    if (here.samples() != trip.summary().samples()) {
      kept.add("samples");
    }
    return new MergedTrip(known.id, known.isRemoved ? Way.BROUGHT_BACK : Way.ALREADY_HERE, kept);
  }

  private MergedTrip add(PortableTrip trip) throws LibraryException {
    saveUnknown(trip.ownVehicle());
    TripSummary told = trip.summary();
    AddedTrip added = adder.begin(told, trip.vehicle(), freeId(told));
    describe(added.id(), said.apply(told.details()));
    trip.pourInto(added);
    return new MergedTrip(added.seal(trip.endMicros()), Way.ADDED, List.of());
  }

  private void describe(String id, TripDetails details) {
    TripRow.bindDetails(handle.createUpdate(Sql.of("updateTripDetails")), details)
        .bind("id", id)
        .execute();
  }

  /** A vehicle that is known here stays as it is here. */
  private void saveUnknown(Vehicle vehicle) {
    if (VehicleRows.file(handle, vehicle.name()).isEmpty()) {
      VehicleRows.save(handle, vehicle);
    }
  }

  private String freeId(TripSummary trip) {
    return ID.matcher(trip.id()).matches() && !TripRow.isTaken(handle, trip.id())
        ? trip.id()
        : TripRow.freeId(handle, trip.start());
  }

  private record Known(long key, String id, boolean isRemoved) {}
}
