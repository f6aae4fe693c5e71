package steadypull.store;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Consumer;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.JdbiException;
import steadypull.channel.Sample;
import steadypull.store.LibraryException.Reason;
import steadypull.vehicle.Vehicle;
import steadypull.vehicle.VehicleFileException;
import steadypull.vehicle.VehicleJson;
import steadypull.vehicle.role.SensorEvidence;
import steadypull.vehicle.role.SensorEvidenceJson;

/**
 * The door to one trip library: the file {@code library.sqlite} in a folder. May be used from
 * several threads and opened by several programs at once; a writer waits up to five seconds for
 * another. A trip that a crash has left behind is brought to its end when the library is opened.
 */
public final class TripLibrary implements AutoCloseable {
  private static final Duration BUSY_TIMEOUT = Duration.ofSeconds(5);

  private final LibraryConnection connection;
  private final TripList trips;
  private final List<String> recovered;
  private final KnownRoads roads;
  private final KnownHeat heat;
  private final KnownComparisons comparisons;

  private TripLibrary(LibraryConnection connection, List<String> recovered) {
    this.connection = connection;
    this.trips = new TripList(connection);
    this.recovered = List.copyOf(recovered);
    this.roads = new KnownRoads(this, connection);
    this.heat = new KnownHeat(this, connection);
    this.comparisons = new KnownComparisons(connection);
  }

  /** Opens the library in a folder, or begins one; an older form is brought to the present one. */
  public static TripLibrary open(Path folder) throws LibraryException {
    return open(folder, BUSY_TIMEOUT);
  }

  static TripLibrary open(Path folder, Duration busyTimeout) throws LibraryException {
    LibraryConnection connection = LibraryConnection.open(folder, busyTimeout);
    try {
      return new TripLibrary(connection, LeftBehind.seal(connection));
    } catch (LibraryException e) {
      // Somebody is writing, the disk is full, or the trip is damaged: all else can still be used.
      return new TripLibrary(connection, List.of());
    }
  }

  /**
   * Opens the library of a folder to read it; nothing there changes, no trip that was left behind
   * is brought to its end. A library that is not there is empty, and still not there afterwards;
   * where nothing may be written, a private copy is read as it is at this moment. What would change
   * something is refused.
   */
  public static TripLibrary openToRead(Path folder) throws LibraryException {
    return new TripLibrary(LibraryConnection.openToRead(folder, BUSY_TIMEOUT), List.of());
  }

  /** What was thrown away cannot be had back afterwards; learning ends. */
  @Override
  public void close() {
    try (connection) {
      roads.close();
      heat.close();
      trips.purge();
    } catch (LibraryException e) {
      // They stay thrown away, only their room is not free yet.
      return;
    }
  }

  /** Trips that a crash had left behind and that were brought to their end now, oldest first. */
  public List<String> recovered() {
    return recovered;
  }

  /** The vehicle of that name with all that was learnt of it, or empty if there is none. */
  public Optional<Vehicle> vehicle(String name) throws LibraryException {
    Optional<KeptVehicle> kept =
        connection.ask("read vehicle " + name, handle -> KeptVehicle.find(handle, name));
    return kept.isEmpty()
        ? Optional.empty()
        : Optional.of(
            parse(kept.get().file(), "vehicle " + name)
                .withConfigurations(kept.get().configurations()));
  }

  /** What this library knows of vehicles' heat. */
  public KnownHeat heat() {
    return heat;
  }

  /** What this library knows of roads. */
  public KnownRoads roads() {
    return roads;
  }

  /** The comparisons of runs that this library keeps. */
  public KnownComparisons comparisons() {
    return comparisons;
  }

  /** The names of all vehicles, last used first. */
  public List<String> vehicleNames() throws LibraryException {
    return connection.ask("list the vehicles", VehicleRows::names);
  }

  /**
   * Keeps a vehicle in place of the one of the same name; it is now the last used. How it is fitted
   * and what was learnt of it stay as they are here.
   */
  public void save(Vehicle vehicle) throws LibraryException {
    String name = vehicle.name();
    connection.change(
        "save vehicle " + name,
        handle -> {
          VehicleRows.save(handle, vehicle);
          return name;
        });
  }

  /** What has been seen of a vehicle's sensors; nothing for a vehicle that is not known. */
  public SensorEvidence sensorEvidence(String vehicleName) throws LibraryException {
    return connection
        .ask(
            "read what was seen of the sensors of " + vehicleName,
            handle -> VehicleRows.evidence(handle, vehicleName))
        .map(SensorEvidenceJson::read)
        .orElseGet(SensorEvidence::none);
  }

  /** Keeps what has been seen of a known vehicle's sensors in place of what was kept before. */
  public void keep(String vehicleName, SensorEvidence evidence) throws LibraryException {
    connection.change(
        "keep what was seen of the sensors of " + vehicleName,
        handle -> {
          VehicleRows.keepEvidence(handle, vehicleName, SensorEvidenceJson.write(evidence));
          return vehicleName;
        });
  }

  /** Begins a trip; it is in the list from now on. Close the recorder in any case. */
  public TripRecorder begin(NewTrip trip) throws LibraryException {
    return begin(trip, TripRecorder.MOST_PENDING);
  }

  TripRecorder begin(NewTrip trip, int mostPending) throws LibraryException {
    Handle handle = connection.handle();
    try {
      return begin(handle, trip, mostPending);
    } catch (JdbiException e) {
      handle.close();
      throw LibraryFault.of("begin a trip", connection.file(), e);
    }
  }

  /** The lock comes first, so that nobody takes the new trip for one that was left behind. */
  private TripRecorder begin(Handle handle, NewTrip trip, int mostPending) {
    String id = TripRow.freeId(handle, trip.start());
    RecordingLock lock = RecordingLock.hold(connection.file(), id);
    try {
      String origin = UUID.randomUUID().toString();
      TripRow row =
          Transaction.write(handle, transaction -> TripRow.insert(transaction, trip, id, origin));
      return new TripRecorder(row, connection.file(), handle, lock, mostPending);
    } catch (JdbiException e) {
      lock.close();
      throw e;
    }
  }

  /**
   * Keeps a finished trip, whole or not at all, and seals it.
   *
   * @param samples in time order
   * @param endMicros end of the trip, microseconds since its start
   * @return the id of the new trip
   */
  public String keep(NewTrip trip, Iterable<Sample> samples, long endMicros)
      throws LibraryException {
    return addTrips(
        adder -> {
          AddedTrip added = adder.begin(trip);
          samples.forEach(added::append);
          return added.seal(endMicros);
        });
  }

  /**
   * Adds finished trips, all of them or, if the work throws, none; without holding them in memory.
   *
   * @return what the work returns
   */
  public <T, X extends Exception> T addTrips(AddingWork<T, X> work) throws X, LibraryException {
    return connection.change("keep trips", handle -> work.addTo(new TripAdder(handle)));
  }

  /**
   * The trips, newest first; with a text those that hold it in anything that was said of them, in
   * their marks, their channels' names or their adapter's.
   */
  public List<TripSummary> trips(Optional<String> find) throws LibraryException {
    return trips.all(find);
  }

  /** The trip whose id is the given text or the only one that begins with it. */
  public TripSummary find(String idOrUniqueBeginning) throws LibraryException {
    return trips.find(idOrUniqueBeginning);
  }

  /** The trip with that own id, or empty if this library does not hold it. */
  public Optional<TripSummary> findOrigin(String origin) throws LibraryException {
    return trips.findOrigin(origin);
  }

  /** Says something else of a trip. */
  public void describe(String tripId, TripDetails details) throws LibraryException {
    trips.describe(tripId, details);
  }

  /** Corrects the vehicle and what it towed on that trip. */
  public void correctVehicle(String tripId, Vehicle vehicle) throws LibraryException {
    trips.correctVehicle(tripId, vehicle);
  }

  /** Throws a trip away; until the library is closed {@link #putBack} brings it back. */
  public void remove(String tripId) throws LibraryException {
    trips.remove(tripId);
  }

  /** Brings back a trip that was thrown away. */
  public void putBack(String tripId) throws LibraryException {
    trips.putBack(tripId);
  }

  /** The vehicle as it was when that trip began. */
  public Vehicle vehicleOf(String tripId) throws LibraryException {
    Optional<String> text =
        connection.ask(
            "read the vehicle of trip " + tripId, handle -> VehicleRows.ofTrip(handle, tripId));
    if (text.isEmpty()) {
      throw trips.unknown(tripId);
    }
    return parse(text.get(), "vehicle of trip " + tripId);
  }

  /**
   * Hands over every entry of a trip in the order in which it was accepted, on the caller's thread,
   * without holding the trip in memory. What the consumer throws comes through. What cannot be read
   * because the library is damaged there is left out, and nothing stands in for it.
   *
   * @return what was left out
   */
  public TripDamage replay(String tripId, Consumer<TripEntry> consumer) throws LibraryException {
    Optional<TripDamage> damage =
        connection.ask(
            "replay trip " + tripId,
            handle ->
                TripRow.find(handle, tripId)
                    .map(
                        row ->
                            TripEntries.replay(
                                handle, row, TripList.channels(handle, tripId), consumer)));
    if (damage.isEmpty()) {
      throw trips.unknown(tripId);
    }
    return damage.get();
  }

  /** What {@link #replay} leaves out; the trip is read to its end. */
  public TripDamage damage(String tripId) throws LibraryException {
    return replay(tripId, _ -> {});
  }

  /**
   * What to draw of a trip as it is now; close it. Channels are numbered as in the summary.
   *
   * @param tripId whole id
   */
  public TripDrawing draw(String tripId) throws LibraryException {
    Handle handle = connection.handleToRead();
    try {
      Optional<TripRow> row = TripRow.find(handle, tripId);
      if (row.isPresent()) {
        return new TripDrawing(connection, row.get(), handle);
      }
      handle.close();
    } catch (JdbiException e) {
      handle.close();
      throw LibraryFault.of("draw trip " + tripId, connection.file(), e);
    }
    throw trips.unknown(tripId);
  }

  /**
   * Copies the library as it is at this moment into one single file, also while it is recorded
   * into.
   *
   * @param file where to; an earlier backup there is replaced
   * @param taken now
   * @param mayReplaceAnything whether another file may be replaced too
   */
  public Backup backupTo(Path file, Instant taken, boolean mayReplaceAnything)
      throws LibraryException {
    BackupFile backup = new BackupFile(file);
    backup.requirePlace(connection.file(), mayReplaceAnything);
    return connection.alone(handle -> backup.write(handle, taken));
  }

  /**
   * Copies the library into a dated file in the folder {@code backups} beside it; otherwise as
   * {@link #backupTo} does.
   *
   * @param taken now
   */
  public Backup backUpBeside(Instant taken) throws LibraryException {
    return backupTo(LibraryFile.backupBeside(connection.file(), taken), taken, false);
  }

  /** The events of a trip in the order in which they came; its samples are not read. */
  public List<TripEvent> events(String tripId) throws LibraryException {
    Optional<List<TripEvent>> events =
        connection.ask(
            "read the events of trip " + tripId,
            handle -> TripRow.find(handle, tripId).map(row -> TripEntries.eventsOf(handle, row)));
    if (events.isEmpty()) {
      throw trips.unknown(tripId);
    }
    return events.get();
  }

  /** How tables with that line of headers are read, or empty if nobody said so. */
  public Optional<String> mapping(String headerLine) throws LibraryException {
    return connection.ask(
        "read how a kind of table is read",
        handle ->
            handle
                .createQuery(Sql.of("selectMapping"))
                .bind("headerLine", headerLine)
                .mapTo(String.class)
                .findOne());
  }

  /** Keeps how tables with that line of headers are read, in place of what was kept before. */
  public void keepMapping(String headerLine, String mapping) throws LibraryException {
    connection.change(
        "keep how a kind of table is read",
        handle ->
            handle
                .createUpdate(Sql.of("saveMapping"))
                .bind("headerLine", headerLine)
                .bind("mapping", mapping)
                .execute());
  }

  /**
   * Keeps routes, all of them or none; one that is there already stays as it is.
   *
   * @return the id of each, in the same order
   */
  public List<String> keepRoutes(List<RouteFile> routes) throws LibraryException {
    return connection.change(
        "keep routes",
        handle -> routes.stream().map(route -> RouteRows.keep(handle, route)).toList());
  }

  /** The routes, first kept first. */
  public List<KeptRoute> routes() throws LibraryException {
    return connection.ask("list the routes", RouteRows::all);
  }

  /** The route of that id, or empty if there is none. */
  public Optional<RouteFile> route(String id) throws LibraryException {
    return connection.ask("read route " + id, handle -> RouteRows.find(handle, id));
  }

  private Vehicle parse(String text, String name) throws LibraryException {
    try {
      return VehicleJson.read(text, name);
    } catch (VehicleFileException e) {
      throw new LibraryException(
          Reason.DAMAGED,
          "Could not read from %s: %s".formatted(connection.file(), e.getMessage()),
          e);
    }
  }

  /**
   * Adds trips.
   *
   * @param <T> what comes out
   * @param <X> what may go wrong; then nothing is added
   */
  @FunctionalInterface
  public interface AddingWork<T, X extends Exception> {
    /** Adds; the adder is of no use afterwards. */
    T addTo(TripAdder adder) throws X;
  }
}
