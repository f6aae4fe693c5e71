package steadypull.store;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.JdbiException;
import steadypull.channel.NearMatch;
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
 * another. A trip that a crash has left behind stays readable and unsealed.
 */
public final class TripLibrary implements AutoCloseable {
  private static final Duration BUSY_TIMEOUT = Duration.ofSeconds(5);

  private final Path file;
  private final Jdbi jdbi;

  /** Open as long as the library, so that its files do not come and go with every question. */
  private final Handle keeper;

  private TripLibrary(Path file, Jdbi jdbi, Handle keeper) {
    this.file = file;
    this.jdbi = jdbi;
    this.keeper = keeper;
  }

  /** Opens the library in a folder, or begins one; an older form is brought to the present one. */
  public static TripLibrary open(Path folder) throws LibraryException {
    return open(folder, BUSY_TIMEOUT);
  }

  static TripLibrary open(Path folder, Duration busyTimeout) throws LibraryException {
    Path file = LibraryFile.create(folder);
    Jdbi jdbi = LibraryFile.connect(file, busyTimeout);
    Handle keeper = handle(jdbi, file);
    try {
      Schema.bringUpToDate(keeper, file);
      return new TripLibrary(file, jdbi, keeper);
    } catch (JdbiException e) {
      keeper.close();
      throw LibraryFault.of("open the library", file, e);
    } catch (LibraryException e) {
      keeper.close();
      throw e;
    }
  }

  @Override
  public void close() {
    keeper.close();
  }

  /** The vehicle of that name, or empty if there is none. */
  public Optional<Vehicle> vehicle(String name) throws LibraryException {
    Optional<String> text =
        ask(
            "read vehicle " + name,
            handle ->
                handle
                    .createQuery(Sql.of("selectVehicle"))
                    .bind("name", name)
                    .mapTo(String.class)
                    .findOne());
    return text.isEmpty() ? Optional.empty() : Optional.of(parse(text.get(), "vehicle " + name));
  }

  /** The names of all vehicles, last used first. */
  public List<String> vehicleNames() throws LibraryException {
    return ask(
        "list the vehicles",
        handle -> handle.createQuery(Sql.of("selectVehicleNames")).mapTo(String.class).list());
  }

  /** Keeps a vehicle in place of the one of the same name; it is now the last used. */
  public void save(Vehicle vehicle) throws LibraryException {
    change(
        "save vehicle " + vehicle.name(),
        handle ->
            handle
                .createUpdate(Sql.of("saveVehicle"))
                .bind("name", vehicle.name())
                .bind("vehicleFile", VehicleJson.write(vehicle))
                .execute());
  }

  /** What has been seen of a vehicle's sensors; nothing for a vehicle that is not known. */
  public SensorEvidence sensorEvidence(String vehicleName) throws LibraryException {
    Optional<String> text =
        ask(
            "read what was seen of the sensors of " + vehicleName,
            handle ->
                handle
                    .createQuery(Sql.of("selectSensorEvidence"))
                    .bind("name", vehicleName)
                    .mapTo(String.class)
                    .findOne());
    return text.map(SensorEvidenceJson::read).orElseGet(SensorEvidence::none);
  }

  /** Keeps what has been seen of a known vehicle's sensors in place of what was kept before. */
  public void keep(String vehicleName, SensorEvidence evidence) throws LibraryException {
    change(
        "keep what was seen of the sensors of " + vehicleName,
        handle ->
            handle
                .createUpdate(Sql.of("updateSensorEvidence"))
                .bind("name", vehicleName)
                .bind("evidence", SensorEvidenceJson.write(evidence))
                .execute());
  }

  /** Begins a trip; it is in the list from now on. Close the recorder in any case. */
  public TripRecorder begin(NewTrip trip) throws LibraryException {
    return begin(trip, TripRecorder.MOST_PENDING);
  }

  TripRecorder begin(NewTrip trip, int mostPending) throws LibraryException {
    Handle handle = handle(jdbi, file);
    try {
      TripRow row = Transaction.write(handle, transaction -> TripRow.insert(transaction, trip));
      return new TripRecorder(row.id(), file, handle, new TripWriter(row.key()), mostPending);
    } catch (JdbiException e) {
      handle.close();
      throw LibraryFault.of("begin a trip", file, e);
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
    return change(
        "keep a trip",
        handle -> {
          TripRow row = TripRow.insert(handle, trip);
          new TripWriter(row.key()).writeAll(handle, samples, endMicros);
          return row.id();
        });
  }

  /** The trips, newest first; with a text those that mention it in id, vehicle or label. */
  public List<TripSummary> trips(Optional<String> find) throws LibraryException {
    List<TripSummary> all = ask("list the trips", handle -> new TripReader(handle).summaries(""));
    return find.isEmpty() ? all : all.stream().filter(trip -> trip.mentions(find.get())).toList();
  }

  /** The trip whose id is the given text or the only one that begins with it. */
  public TripSummary find(String idOrUniqueBeginning) throws LibraryException {
    String wanted = idOrUniqueBeginning.strip();
    List<TripSummary> found =
        wanted.isEmpty()
            ? List.of()
            : ask("find trip " + wanted, handle -> new TripReader(handle).summaries(wanted));
    return switch (found.size()) {
      case 0 -> throw unknownTrip(wanted);
      case 1 -> found.getFirst();
      default -> throw ambiguousTrip(wanted, found);
    };
  }

  /** The vehicle as it was when that trip began. */
  public Vehicle vehicleOf(String tripId) throws LibraryException {
    Optional<String> text =
        ask(
            "read the vehicle of trip " + tripId,
            handle ->
                handle
                    .createQuery(Sql.of("selectVehicleOfTrip"))
                    .bind("id", tripId)
                    .mapTo(String.class)
                    .findOne());
    if (text.isEmpty()) {
      throw unknownTrip(tripId);
    }
    return parse(text.get(), "vehicle of trip " + tripId);
  }

  /**
   * Hands over every entry of a trip in the order in which it was accepted, on the caller's thread,
   * without holding the trip in memory. What the consumer throws comes through.
   */
  public void replay(String tripId, Consumer<TripEntry> consumer) throws LibraryException {
    boolean isKnown =
        ask(
            "replay trip " + tripId,
            handle -> {
              Optional<TripRow> row = TripRow.find(handle, tripId);
              row.ifPresent(found -> new TripReader(handle).replay(found.key(), consumer));
              return row.isPresent();
            });
    if (!isKnown) {
      throw unknownTrip(tripId);
    }
  }

  private LibraryException unknownTrip(String wanted) throws LibraryException {
    List<String> ids = ask("list the trips", handle -> new TripReader(handle).ids());
    return new LibraryException(
        Reason.UNKNOWN_TRIP,
        "Could not find a trip: expected an id of %s or its beginning, found \"%s\".%s The list of trips shows the %d ids."
            .formatted(file, wanted, NearMatch.question(wanted, ids), ids.size()));
  }

  private static LibraryException ambiguousTrip(String wanted, List<TripSummary> found) {
    String ids = String.join(", ", found.stream().limit(5).map(TripSummary::id).toList());
    return new LibraryException(
        Reason.AMBIGUOUS_TRIP,
        "Could not choose a trip: expected the beginning of one id, found \"%s\", with which %d begin: %s%s. Give more of the id."
            .formatted(wanted, found.size(), ids, found.size() > 5 ? ", ..." : ""));
  }

  private Vehicle parse(String text, String name) throws LibraryException {
    try {
      return VehicleJson.read(text, name);
    } catch (VehicleFileException e) {
      throw new LibraryException(
          Reason.DAMAGED, "Could not read from %s: %s".formatted(file, e.getMessage()), e);
    }
  }

  private <T> T ask(String tried, Function<Handle, T> question) throws LibraryException {
    try {
      return jdbi.withHandle(handle -> Transaction.read(handle, question::apply));
    } catch (JdbiException e) {
      throw LibraryFault.of(tried, file, e);
    }
  }

  private <T> T change(String tried, Function<Handle, T> change) throws LibraryException {
    try {
      return jdbi.withHandle(handle -> Transaction.write(handle, change::apply));
    } catch (JdbiException e) {
      throw LibraryFault.of(tried, file, e);
    }
  }

  private static Handle handle(Jdbi jdbi, Path file) throws LibraryException {
    try {
      return jdbi.open();
    } catch (JdbiException e) {
      throw LibraryFault.of("open the library", file, e);
    }
  }
}
