package steadypull.drive;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import steadypull.store.LibraryException;
import steadypull.store.TripEvent;
import steadypull.store.TripLibrary;
import steadypull.store.TripSummary;
import steadypull.vehicle.Limit;
import steadypull.vehicle.Rig;
import steadypull.vehicle.Vehicle;

/**
 * All that is told of one trip, but for its samples. Immutable.
 *
 * @param vehicle as it was when the trip began
 * @param events in the order in which they came
 */
public record WholeTrip(TripSummary summary, Vehicle vehicle, List<TripEvent> events) {
  public WholeTrip {
    Objects.requireNonNull(summary);
    Objects.requireNonNull(vehicle);
    events = List.copyOf(events);
  }

  /** The trip of a library whose id is the given text or begins with it, and no other's. */
  public static WholeTrip of(TripLibrary library, String tripId) throws LibraryException {
    TripSummary summary = library.find(tripId);
    return new WholeTrip(summary, library.vehicleOf(summary.id()), library.events(summary.id()));
  }

  /** What was moved. */
  public Rig rig() {
    return vehicle.rig();
  }

  /** The limits that its vehicle had of channels that were recorded. */
  List<Limit> limits() {
    return vehicle.limits().values().stream()
        .filter(limit -> summary.channels().contains(limit.channel()))
        .toList();
  }

  /** The moments that somebody marked. */
  public List<TripEvent> marks() {
    return events.stream().filter(event -> event.kind() == TripEvent.Kind.MARK).toList();
  }

  /** How often advice was given, followed and held. */
  public AdviceRecord advice() {
    return AdviceRecord.of(events);
  }

  /** How many of each kind; kinds that did not occur are absent. */
  public Map<TripEvent.Kind, Long> eventCounts() {
    Map<TripEvent.Kind, Long> counts = new EnumMap<>(TripEvent.Kind.class);
    events.forEach(event -> counts.merge(event.kind(), 1L, Long::sum));
    return counts;
  }
}
