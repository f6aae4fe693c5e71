package steadypull.store;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.Update;
import steadypull.channel.Channel;
import steadypull.channel.NearMatch;
import steadypull.store.LibraryException.Reason;
import steadypull.vehicle.Vehicle;
import steadypull.vehicle.VehicleJson;

/** The trips of a library as a list: finding, describing, throwing away. Thread-safe. */
final class TripList {
  private static final int MOST_NAMED = 5;
  private static final int KEPT = 0;
  private static final int REMOVED = 1;
  private static final List<String> PURGE =
      List.of(
          "purgeSegments",
          "purgeOverviews",
          "purgeEvents",
          "purgeTripTwins",
          "purgeTrips",
          "purgeTripVehicles");

  private final LibraryConnection connection;
  private final Set<String> removed = ConcurrentHashMap.newKeySet();

  TripList(LibraryConnection connection) {
    this.connection = connection;
  }

  List<TripSummary> all(Optional<String> find) throws LibraryException {
    List<TripSummary> all =
        connection.ask("list the trips", handle -> new TripReader(handle).summaries(""));
    if (find.isEmpty()) {
      return all;
    }
    Predicate<String> wanted = holds(find.get());
    Predicate<Channel> wantedChannel = named(wanted);
    Set<String> marked = connection.ask("search the marks", handle -> marked(handle, wanted));
    return all.stream()
        .filter(
            trip ->
                trip.mentions(wanted)
                    || trip.channels().stream().anyMatch(wantedChannel)
                    || marked.contains(trip.id()))
        .toList();
  }

  /** By its id, with lines or blanks between the words; each channel is looked at once. */
  private static Predicate<Channel> named(Predicate<String> wanted) {
    Map<Channel, Boolean> known = new HashMap<>();
    return channel ->
        known.computeIfAbsent(
            channel, each -> wanted.test(each.id()) || wanted.test(each.id().replace('_', ' ')));
  }

  /** The trips on which somebody marked a moment with such words. */
  private static Set<String> marked(Handle handle, Predicate<String> wanted) {
    return handle
        .createQuery(Sql.of("selectMarks"))
        .map((row, context) -> Map.entry(row.getString("id"), row.getString("detail")))
        .stream()
        .filter(mark -> wanted.test(mark.getValue()))
        .map(Map.Entry::getKey)
        .collect(Collectors.toSet());
  }

  /** In whatever case. */
  private static Predicate<String> holds(String text) {
    return Pattern.compile(text, Pattern.LITERAL | Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE)
        .asPredicate();
  }

  TripSummary find(String idOrUniqueBeginning) throws LibraryException {
    String wanted = idOrUniqueBeginning.strip();
    List<TripSummary> found =
        wanted.isEmpty()
            ? List.of()
            : connection.ask(
                "find trip " + wanted, handle -> new TripReader(handle).summaries(wanted));
    return switch (found.size()) {
      case 0 -> throw unknown(wanted);
      case 1 -> found.getFirst();
      default -> throw ambiguous(wanted, found);
    };
  }

  Optional<TripSummary> findOrigin(String origin) throws LibraryException {
    return connection.ask(
        "find the trip of an own id",
        handle ->
            handle
                .createQuery(Sql.of("selectTripOfOrigin"))
                .bind("origin", origin)
                .mapTo(String.class)
                .findOne()
                .flatMap(id -> new TripReader(handle).summaries(id).stream().findFirst()));
  }

  static List<Channel> channels(Handle handle, String tripId) {
    return new TripReader(handle).summaries(tripId).getFirst().channels();
  }

  void describe(String tripId, TripDetails details) throws LibraryException {
    require(
        tripId,
        connection.change(
            "describe trip " + tripId,
            handle ->
                telling(
                    handle,
                    tripId,
                    TripRow.bindDetails(handle.createUpdate(Sql.of("updateTripDetails")), details)
                        .bind("id", tripId))));
  }

  void correctVehicle(String tripId, Vehicle vehicle) throws LibraryException {
    require(
        tripId,
        connection.change(
            "correct the vehicle of trip " + tripId,
            handle ->
                telling(
                    handle,
                    tripId,
                    handle
                        .createUpdate(Sql.of("updateTripVehicle"))
                        .bind("vehicleKey", TripRow.vehicleKey(handle, VehicleJson.write(vehicle)))
                        .bind("id", tripId))));
  }

  /** Changes a trip and its second telling. */
  private static int telling(Handle handle, String tripId, Update change) {
    int changed = change.execute();
    TripRow.find(handle, tripId).ifPresent(trip -> TripRow.tellTwice(handle, trip.key()));
    return changed;
  }

  void remove(String tripId) throws LibraryException {
    requireEnded(tripId);
    mark(tripId, "throw away", REMOVED);
    removed.add(tripId);
  }

  void putBack(String tripId) throws LibraryException {
    mark(tripId, "bring back", KEPT);
    removed.remove(tripId);
  }

  /** Forgets what was thrown away here; what another program has thrown away can be had back. */
  void purge() throws LibraryException {
    if (removed.isEmpty()) {
      return;
    }
    connection.change(
        "forget what was thrown away",
        handle -> {
          removed.forEach(tripId -> forget(handle, tripId));
          PURGE.forEach(statement -> handle.createUpdate(Sql.of(statement)).execute());
          return true;
        });
    removed.clear();
  }

  LibraryException unknown(String wanted) throws LibraryException {
    List<String> ids = connection.ask("list the trips", handle -> new TripReader(handle).ids());
    return new LibraryException(
        Reason.UNKNOWN_TRIP,
        "Could not find a trip: expected an id of %s or its beginning, found \"%s\".%s The list of trips shows the %d ids."
            .formatted(connection.file(), wanted, NearMatch.question(wanted, ids), ids.size()));
  }

  private void mark(String tripId, String verb, int state) throws LibraryException {
    require(
        tripId, connection.change(verb + " trip " + tripId, handle -> mark(handle, tripId, state)));
  }

  private static int mark(Handle handle, String tripId, int state) {
    return handle
        .createUpdate(Sql.of("markRemoved"))
        .bind("id", tripId)
        .bind("removed", state)
        .execute();
  }

  /** Nothing happens to a trip that came back meanwhile. */
  private static void forget(Handle handle, String tripId) {
    handle.createUpdate(Sql.of("forgetRemoved")).bind("id", tripId).execute();
  }

  /** A trip that a crash has left behind is brought to its end by who opens the library. */
  private void requireEnded(String tripId) throws LibraryException {
    if (!find(tripId).sealed()) {
      throw new LibraryException(
          Reason.BUSY,
          "Could not throw away trip %s: expected a trip that has ended, found one that is being recorded or could not be brought to its end. End its drive, or make room on the disk, and try again."
              .formatted(tripId));
    }
  }

  private void require(String tripId, int changed) throws LibraryException {
    if (changed == 0) {
      throw unknown(tripId);
    }
  }

  private static LibraryException ambiguous(String wanted, List<TripSummary> found) {
    String ids = String.join(", ", found.stream().limit(MOST_NAMED).map(TripSummary::id).toList());
    return new LibraryException(
        Reason.AMBIGUOUS_TRIP,
        "Could not choose a trip: expected the beginning of one id, found \"%s\", with which %d begin: %s%s. Give more of the id."
            .formatted(wanted, found.size(), ids, found.size() > MOST_NAMED ? ", ..." : ""));
  }
}
