package steadypull.store;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import steadypull.channel.Channel;
import steadypull.road.climb.KnownClimb;
import steadypull.store.page.DatabasePages;
import steadypull.vehicle.Configuration;

/**
 * Everything of a library that can be read from its pages, samples excepted: of these it is known
 * where they lie. One thread.
 */
final class LibraryFinds {
  private final Map<Long, LibraryRow.OfTrip> trips = new HashMap<>();
  private final Map<Long, LibraryRow.OfTrip> twins = new HashMap<>();
  private final Map<Long, String> tripIds = new HashMap<>();
  private final Map<Long, List<LibraryRow.OfSegment>> segments = new HashMap<>();
  private final Map<Long, SortedMap<Long, LibraryRow.OfEvent>> events = new HashMap<>();
  private final Map<Long, Channel> channels = new HashMap<>();
  private final Map<Long, String> tripVehicles = new HashMap<>();
  private final Map<String, LibraryRow.OfVehicle> vehicles = new HashMap<>();
  private final Map<String, LibraryRow.OfRoute> routes = new HashMap<>();
  private final Map<String, String> mappings = new HashMap<>();
  private final SortedMap<Long, byte[]> roadTiles = new TreeMap<>();
  private final Map<String, Long> roadLearned = new HashMap<>();
  private final SortedMap<Long, QuietPlace> quietPlaces = new TreeMap<>();
  private final Map<String, KnownClimb> climbs = new HashMap<>();

  private final Map<String, SortedMap<Instant, Configuration>> configurations = new HashMap<>();
  private final Map<String, LibraryRow.OfTripHeat> tripHeat = new HashMap<>();
  private final Map<String, KeptComparison> comparisons = new HashMap<>();

  private LibraryFinds() {}

  static LibraryFinds of(DatabasePages pages) {
    LibraryFinds finds = new LibraryFinds();
    pages.forEachRow(row -> LibraryRows.recognise(row).ifPresent(finds::add));
    finds.twins.forEach(finds.trips::putIfAbsent);
    return finds;
  }

  private void add(LibraryRow row) {
    switch (row) {
      // Of two the one that has come further: the other lies in a page that is no longer used.
      case LibraryRow.OfTrip trip -> trips.merge(trip.tripKey(), trip, LibraryFinds::further);
      case LibraryRow.OfTripTwin(LibraryRow.OfTrip trip) ->
          twins.merge(trip.tripKey(), trip, LibraryFinds::further);
      case LibraryRow.OfTripId(long key, String id) -> tripIds.put(key, id);
      case LibraryRow.OfSegment segment -> of(segments, segment.tripKey()).add(segment);
      case LibraryRow.OfEvent event ->
          events
              .computeIfAbsent(event.tripKey(), _ -> new TreeMap<>())
              .put(event.sequence(), event);
      case LibraryRow.OfChannel(long key, Channel channel) -> channels.put(key, channel);
      case LibraryRow.OfTripVehicle(long key, String file) -> tripVehicles.put(key, file);
      case LibraryRow.OfVehicle vehicle -> vehicles.put(vehicle.name(), vehicle);
      case LibraryRow.OfRoute route -> routes.put(route.id(), route);
      case LibraryRow.OfMapping(String headerLine, String file) -> mappings.put(headerLine, file);
      case LibraryRow.OfComparison(KeptComparison comparison) ->
          comparisons.merge(comparison.name(), comparison, LibraryFinds::later);
      case LibraryRow.OfRoadTile(long key, byte[] tile) -> roadTiles.put(key, tile);
      case LibraryRow.OfRoadLearned(String origin, long passes) -> roadLearned.put(origin, passes);
      case LibraryRow.OfRoadQuiet(long key, QuietPlace place) -> quietPlaces.put(key, place);
      case LibraryRow.OfClimb(KnownClimb climb) -> climbs.put(climb.id(), climb);
      case LibraryRow.OfConfiguration(String vehicleName, Configuration configuration) ->
          configurations
              .computeIfAbsent(vehicleName, _ -> new TreeMap<>())
              .put(configuration.since(), configuration);
      case LibraryRow.OfTripHeat told -> tripHeat.put(told.origin(), told);
    }
  }

  private static LibraryRow.OfTrip further(LibraryRow.OfTrip one, LibraryRow.OfTrip other) {
    return other.reachedMicros() >= one.reachedMicros() ? other : one;
  }

  private static <T> List<T> of(Map<Long, List<T>> lists, long key) {
    return lists.computeIfAbsent(key, _ -> new ArrayList<>());
  }

  /** Trips that nobody has thrown away, oldest first. */
  List<LibraryRow.OfTrip> trips() {
    return trips.values().stream()
        .filter(trip -> !trip.isRemoved())
        .sorted(
            Comparator.comparingLong(LibraryRow.OfTrip::startEpochMicros)
                .thenComparingLong(LibraryRow.OfTrip::tripKey))
        .toList();
  }

  /** Also those that somebody has thrown away. */
  long tripRows() {
    return trips.size();
  }

  /** Of all trips. */
  long eventRows() {
    return events.values().stream().mapToLong(found -> found.size()).sum();
  }

  /** The numbers of trips of which something is there, but not the trip's own row. */
  List<Long> tripsWithoutRow() {
    TreeSet<Long> keys = new TreeSet<>();
    Stream.of(tripIds.keySet(), segments.keySet(), events.keySet()).forEach(keys::addAll);
    keys.removeAll(trips.keySet());
    return List.copyOf(keys);
  }

  /** The id of a trip whose row is lost, or null if that is lost too. */
  @Nullable String tripId(long tripKey) {
    return tripIds.get(tripKey);
  }

  List<LibraryRow.OfSegment> segments(long tripKey) {
    return List.copyOf(segments.getOrDefault(tripKey, List.of()));
  }

  /** By their sequence. */
  SortedMap<Long, LibraryRow.OfEvent> events(long tripKey) {
    return events.getOrDefault(tripKey, new TreeMap<>());
  }

  @Nullable Channel channel(long key) {
    return channels.get(key);
  }

  @Nullable String tripVehicle(long key) {
    return tripVehicles.get(key);
  }

  LibraryRow.@Nullable OfVehicle vehicle(String name) {
    return vehicles.get(name);
  }

  /** The one that was used last comes last. */
  List<LibraryRow.OfVehicle> vehicles() {
    return vehicles.values().stream()
        .sorted(Comparator.comparingLong(LibraryRow.OfVehicle::usedOrder))
        .toList();
  }

  List<LibraryRow.OfRoute> routes() {
    return List.copyOf(routes.values());
  }

  /** Of two of one name the one that was kept later. */
  private static KeptComparison later(KeptComparison one, KeptComparison other) {
    return one.kept().isAfter(other.kept()) ? one : other;
  }

  Collection<KeptComparison> comparisons() {
    return List.copyOf(comparisons.values());
  }

  Map<String, String> mappings() {
    return Map.copyOf(mappings);
  }

  /** Of the memory of roads, by their keys. */
  SortedMap<Long, byte[]> roadTiles() {
    return Collections.unmodifiableSortedMap(roadTiles);
  }

  /** Passes learned of each trip, by the trip's own id. */
  Map<String, Long> roadLearned() {
    return Map.copyOf(roadLearned);
  }

  /** In the order in which they were kept. */
  List<QuietPlace> quietPlaces() {
    return List.copyOf(quietPlaces.values());
  }

  List<KnownClimb> climbs() {
    return List.copyOf(climbs.values());
  }

  /** How vehicles were fitted, by their names, in order. */
  Map<String, List<Configuration>> configurations() {
    Map<String, List<Configuration>> all = new HashMap<>();
    configurations.forEach((name, each) -> all.put(name, List.copyOf(each.values())));
    return all;
  }

  /** How many configurations there are, of all vehicles. */
  long configurationRows() {
    return configurations.values().stream().mapToLong(each -> each.size()).sum();
  }

  List<LibraryRow.OfTripHeat> tripHeat() {
    return List.copyOf(tripHeat.values());
  }

  /** Whether there is anything that only a trip library holds. */
  boolean isOfLibrary() {
    return !trips.isEmpty()
        || !tripIds.isEmpty()
        || segments.values().stream().flatMap(List::stream).anyMatch(it -> it.isWhole());
  }
}
