package steadypull.store;

import java.time.Instant;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import org.jdbi.v3.core.Handle;
import org.jspecify.annotations.Nullable;
import steadypull.channel.Channel;
import steadypull.store.column.Segment;
import steadypull.store.page.DatabasePages;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.Vehicle;
import steadypull.vehicle.VehicleFileException;
import steadypull.vehicle.VehicleJson;

/**
 * Adds what is left of one trip to another library, under its own id, with an event where samples
 * are missing. Inside somebody else's transaction; for one trip.
 */
final class TripSalvage {
  private final LibraryFinds finds;
  private final DatabasePages pages;
  private final LibraryRow.OfTrip trip;
  private final KeptSegments kept;
  private final List<String> losses = new ArrayList<>();

  TripSalvage(LibraryFinds finds, DatabasePages pages, LibraryRow.OfTrip trip) {
    this.finds = finds;
    this.pages = pages;
    this.trip = trip;
    this.kept = KeptSegments.of(trip, finds.segments(trip.tripKey()));
  }

  /** Samples that are missing, in their order. */
  List<LostPart> lostParts() {
    List<Channel> named = trip.channelKeys().stream().map(this::named).toList();
    List<LostPart> lost = new ArrayList<>();
    kept.holes().forEach(hole -> lost.add(hole.lostOf(trip.id())));
    for (LibraryRow.OfSegment segment : kept.segments()) {
      SalvagedEntries.lostOf(
              trip.id(), samples(segment), number -> SalvagedEntries.channel(named, number))
          .ifPresent(lost::add);
    }
    lost.sort(Comparator.comparingDouble(LostPart::fromSeconds));
    return lost;
  }

  /** What else is missing, in words; known when the trip has been added or looked at. */
  List<String> losses() {
    return List.copyOf(losses);
  }

  /** Finds out what else is missing, and adds nothing. */
  void look() {
    vehicle();
    channels();
    events();
  }

  void addTo(Handle handle) {
    NewTrip told =
        new NewTrip(
            vehicle(),
            Instant.EPOCH.plus(trip.startEpochMicros(), ChronoUnit.MICROS),
            trip.startOffsetSeconds().map(ZoneOffset::ofTotalSeconds),
            trip.details(),
            trip.source(),
            trip.softwareVersion());
    TripRow row = TripRow.insert(handle, told, trip.id(), trip.origin());
    handle
        .createUpdate(Sql.of("updateTripLink"))
        .bind("tripKey", row.key())
        .bind("adapter", trip.link().adapter())
        .bind("protocol", trip.link().protocol())
        .bind("vehicleNumberHash", trip.link().vehicleNumberHash())
        .execute();
    pour(new AddedTrip(handle, row));
  }

  private void pour(AddedTrip added) {
    SalvagedEntries entries =
        new SalvagedEntries(trip.id(), added, channels(), events(), kept.holes());
    for (LibraryRow.OfSegment segment : kept.segments()) {
      entries.addSegment(segment.firstSample(), samples(segment));
    }
    entries.addTheRest();
    if (!trip.isSealed()) {
      added.append(SalvagedEntries.recording(trip.reachedMicros(), LeftBehind.DETAIL));
    }
    added.seal(trip.reachedMicros());
  }

  private Segment samples(LibraryRow.OfSegment segment) {
    return pages
        .row(segment.place())
        .flatMap(LibraryRows::samples)
        .orElseThrow(() -> new DamagedTripException("expected a segment again, found none"));
  }

  private List<LibraryRow.OfEvent> events() {
    SortedMap<Long, LibraryRow.OfEvent> found = finds.events(trip.tripKey());
    long least = found.isEmpty() ? 0 : found.lastKey() + 1;
    if (found.size() < least) {
      losses.add(
          "trip %s: at least %d of %d events".formatted(trip.id(), least - found.size(), least));
    }
    return List.copyOf(found.values());
  }

  private List<Channel> channels() {
    return trip.channelKeys().stream().map(this::channel).toList();
  }

  private Channel channel(long key) {
    Channel named = named(key);
    if (finds.channel(key) == null) {
      losses.add("trip %s: the name of channel %s".formatted(trip.id(), named.id()));
    }
    return named;
  }

  /** What a channel was called can be lost while its samples are there. */
  private Channel named(long key) {
    Channel found = finds.channel(key);
    return found == null ? new Channel("unnamed_" + Math.abs(key), "1") : found;
  }

  private Vehicle vehicle() {
    Optional<Vehicle> then = parse(finds.tripVehicle(trip.vehicleKey()));
    if (then.isPresent()) {
      return then.get();
    }
    LibraryRow.OfVehicle now = finds.vehicle(trip.vehicleName());
    losses.add(
        "trip %s: the vehicle as it was then%s"
            .formatted(trip.id(), now == null ? "" : "; it has the vehicle as it is now"));
    return parse(now == null ? null : now.vehicleFile())
        .orElseGet(() -> Vehicle.unknown(trip.vehicleName(), CoolingLayout.AIR_TO_AIR));
  }

  private Optional<Vehicle> parse(@Nullable String file) {
    try {
      return file == null
          ? Optional.empty()
          : Optional.of(VehicleJson.read(file, trip.vehicleName()));
    } catch (VehicleFileException e) {
      // A text that was damaged: as if it were lost.
      return Optional.empty();
    }
  }
}
