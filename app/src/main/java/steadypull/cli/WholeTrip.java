package steadypull.cli;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import steadypull.store.LibraryException;
import steadypull.store.TripDamage;
import steadypull.store.TripEvent;
import steadypull.store.TripLibrary;
import steadypull.store.TripSummary;
import steadypull.vehicle.Rig;

/**
 * All that is told of one trip, but for its samples. Immutable.
 *
 * @param events in the order in which they came
 * @param damage what of it cannot be read
 */
record WholeTrip(TripSummary summary, Rig rig, List<TripEvent> events, TripDamage damage) {
  WholeTrip {
    Objects.requireNonNull(damage);
    events = List.copyOf(events);
  }

  static WholeTrip of(TripLibrary library, String tripId) throws LibraryException {
    TripSummary summary = library.find(tripId);
    return new WholeTrip(
        summary,
        library.vehicleOf(summary.id()).rig(),
        library.events(summary.id()),
        library.damage(summary.id()));
  }

  List<TripEvent> marks() {
    return events.stream().filter(event -> event.kind() == TripEvent.Kind.MARK).toList();
  }

  /** How many of each kind; kinds that did not occur are absent. */
  Map<TripEvent.Kind, Long> eventCounts() {
    Map<TripEvent.Kind, Long> counts = new EnumMap<>(TripEvent.Kind.class);
    events.forEach(event -> counts.merge(event.kind(), 1L, Long::sum));
    return counts;
  }
}
