package steadypull.store;

import java.time.Instant;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.SortedMap;
import org.jdbi.v3.core.Handle;
import org.jspecify.annotations.Nullable;
import steadypull.channel.Channel;
import steadypull.channel.Sample;
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
    return kept.holes().stream()
        .map(hole -> LostPart.piece(trip.id(), hole.fromMicros(), hole.toMicros()))
        .toList();
  }

  /** What else is missing, in words; known when the trip has been added. */
  List<String> losses() {
    return List.copyOf(losses);
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
    List<Channel> channels = channels();
    Iterator<LibraryRow.OfEvent> events = events().iterator();
    Iterator<KeptSegments.Hole> holes = kept.holes().iterator();
    Merge merge = new Merge(added, channels, events, holes);
    for (LibraryRow.OfSegment segment : kept.segments()) {
      merge.sampleNumber = segment.firstSample();
      samples(segment).forEach(merge::add);
    }
    merge.addUpTo(Long.MAX_VALUE);
    if (!trip.isSealed()) {
      added.append(recording(trip.reachedMicros(), LeftBehind.DETAIL));
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

  /** What a channel was called can be lost while its samples are there. */
  private Channel channel(long key) {
    Channel found = finds.channel(key);
    if (found != null) {
      return found;
    }
    Channel unnamed = new Channel("unnamed_" + key, "1");
    losses.add("trip %s: the name of channel %s".formatted(trip.id(), unnamed.id()));
    return unnamed;
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

  private static TripEntry.OfEvent recording(long timeMicros, String detail) {
    return new TripEntry.OfEvent(new TripEvent(timeMicros, TripEvent.Kind.RECORDING, detail));
  }

  private static TripEntry.OfEvent lost(KeptSegments.Hole hole) {
    return recording(
        hole.fromMicros(),
        String.format(
            Locale.ROOT,
            "The library was damaged: %d samples from %.3f s to %.3f s could not be read.",
            hole.nextSample() - hole.firstSample(),
            hole.fromMicros() / 1e6,
            hole.toMicros() / 1e6));
  }

  /** Puts samples, events and holes into one order. */
  private static final class Merge {
    private final AddedTrip added;
    private final List<Channel> channels;
    private final Iterator<LibraryRow.OfEvent> events;
    private final Iterator<KeptSegments.Hole> holes;
    private LibraryRow.@Nullable OfEvent nextEvent;
    private KeptSegments.@Nullable Hole nextHole;
    private long sampleNumber;

    Merge(
        AddedTrip added,
        List<Channel> channels,
        Iterator<LibraryRow.OfEvent> events,
        Iterator<KeptSegments.Hole> holes) {
      this.added = added;
      this.channels = channels;
      this.events = events;
      this.holes = holes;
      this.nextEvent = next(events);
      this.nextHole = next(holes);
    }

    void add(int channel, long timeMicros, double value) {
      addUpTo(sampleNumber++);
      if (channel >= channels.size()) {
        throw new DamagedTripException(
            "expected one of %d channels, found number %d".formatted(channels.size(), channel));
      }
      added.append(new Sample(channels.get(channel), timeMicros, value));
    }

    /** Adds what comes before the sample of that number. */
    void addUpTo(long number) {
      for (var hole = nextHole; hole != null && hole.firstSample() < number; hole = nextHole) {
        addEventsUpTo(hole.firstSample());
        added.append(lost(hole));
        nextHole = next(holes);
      }
      addEventsUpTo(number);
    }

    private void addEventsUpTo(long number) {
      for (var event = nextEvent;
          event != null && event.afterSamples() <= number;
          event = nextEvent) {
        added.append(new TripEntry.OfEvent(event.event()));
        nextEvent = next(events);
      }
    }

    private static <T> @Nullable T next(Iterator<T> iterator) {
      return iterator.hasNext() ? iterator.next() : null;
    }
  }
}
