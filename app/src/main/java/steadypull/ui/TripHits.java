package steadypull.ui;

import java.util.Collection;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeSet;
import steadypull.drive.DriveException;
import steadypull.drive.TripDesk;
import steadypull.store.TripSummary;

/**
 * What was found for a question. Immutable.
 *
 * @param query the question
 * @param trips the hits, newest first
 * @param all how many trips there are
 * @param vehicles names of all vehicles that have trips, in order of the alphabet
 * @param tags all tags in use, in order of the alphabet
 */
record TripHits(
    TripQuery query, List<TripSummary> trips, int all, List<String> vehicles, List<String> tags) {
  TripHits {
    Objects.requireNonNull(query);
    trips = List.copyOf(trips);
    vehicles = List.copyOf(vehicles);
    tags = List.copyOf(tags);
  }

  /** Asks the desk; any thread. */
  static TripHits ask(TripDesk desk, TripQuery query) throws DriveException {
    List<TripSummary> all = desk.all();
    List<TripSummary> mentioned = query.text().isEmpty() ? all : desk.find(query.text());
    return new TripHits(
        query,
        query.filter(mentioned),
        all.size(),
        ordered(all.stream().map(TripSummary::vehicleName).toList()),
        ordered(all.stream().flatMap(trip -> trip.details().tags().stream()).toList()));
  }

  boolean holds(String tripId) {
    return trips.stream().anyMatch(trip -> trip.id().equals(tripId));
  }

  /** The place of a trip in the list; 0 if it is not there. */
  int placeOf(String tripId) {
    return Math.max(0, trips.stream().map(TripSummary::id).toList().indexOf(tripId));
  }

  /** The trip at a place, or the last one; empty if there is none. */
  Optional<TripSummary> near(int place) {
    return trips.isEmpty()
        ? Optional.empty()
        : Optional.of(trips.get(Math.min(place, trips.size() - 1)));
  }

  private static List<String> ordered(Collection<String> words) {
    TreeSet<String> ordered =
        new TreeSet<>(String.CASE_INSENSITIVE_ORDER.thenComparing(String::compareTo));
    ordered.addAll(words);
    return List.copyOf(ordered);
  }
}
