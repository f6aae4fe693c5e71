package steadypull.store;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import steadypull.channel.Channel;
import steadypull.store.LibraryException.Reason;
import steadypull.vehicle.Vehicle;

/**
 * A trip as a file: a trip library that holds one trip and its vehicle's file, closed as one single
 * file. A file that was opened is whole and harmless: it is read through a private copy, which may
 * be of an older form, and every entry has been read once. One thread; close it.
 */
public final class PortableTrip implements AutoCloseable {
  private static final double MICROS_PER_SECOND = 1e6;

  private final PrivateFolder folder;
  private final TripLibrary library;
  private final TripSummary summary;
  private final Vehicle vehicle;
  private final Vehicle ownVehicle;

  private PortableTrip(
      PrivateFolder folder,
      TripLibrary library,
      TripSummary summary,
      Vehicle vehicle,
      Vehicle ownVehicle) {
    this.folder = folder;
    this.library = library;
    this.summary = summary;
    this.vehicle = vehicle;
    this.ownVehicle = ownVehicle;
  }

  /**
   * Opens a trip file, whatever it may be in truth.
   *
   * @throws LibraryException if it is not the file of one trip, is damaged, or comes from a newer
   *     version; the message names the file
   */
  public static PortableTrip open(Path file) throws LibraryException {
    PrivateFolder folder = folder(file);
    try {
      ForeignFile.requireLibrary(copy(file, folder), file);
      return read(file, folder);
    } catch (LibraryException e) {
      folder.close();
      throw e;
    }
  }

  /**
   * Writes a trip as such a file.
   *
   * @param from holds the trip
   * @param trip one that has ended
   * @param chosen whose samples go along
   * @return how many samples that were
   * @throws IOException if the stream does not take it
   */
  public static long write(
      TripLibrary from, TripSummary trip, Predicate<Channel> chosen, OutputStream out)
      throws LibraryException, IOException {
    try (PrivateFolder folder = PrivateFolder.make()) {
      long samples = copy(from, trip, chosen, folder.path());
      Path file = LibraryFile.closeAsOneFile(folder.path());
      Files.copy(file, out);
      return samples;
    }
  }

  private static long copy(
      TripLibrary from, TripSummary trip, Predicate<Channel> chosen, Path folder)
      throws LibraryException {
    Vehicle towing = from.vehicleOf(trip.id());
    Optional<Vehicle> own = from.vehicle(towing.name());
    try (TripLibrary into = TripLibrary.open(folder)) {
      return into.<Long, LibraryException>addTrips(
          adder -> {
            adder.save(own.orElse(towing));
            AddedTrip copy = adder.begin(trip, towing, trip.id());
            TripDamage damage = TripCopy.pour(from, trip.id(), chosen, copy);
            for (LostPart lost : damage.parts()) {
              copy.append(SalvagedEntries.lost(endMicros(trip), lost));
            }
            copy.seal(endMicros(trip));
            return copy.samples();
          });
    }
  }

  /** What the file says of its trip. */
  public TripSummary summary() {
    return summary;
  }

  /** The vehicle as it was when the trip began. */
  public Vehicle vehicle() {
    return vehicle;
  }

  /** The vehicle as it was when the file was written. */
  Vehicle ownVehicle() {
    return ownVehicle;
  }

  /** Microseconds since the start of the trip. */
  long endMicros() {
    return endMicros(summary);
  }

  /** Adds every entry to a trip elsewhere. */
  void pourInto(AddedTrip trip) throws LibraryException {
    TripCopy.pour(library, summary.id(), _ -> true, trip);
  }

  @Override
  public void close() {
    library.close();
    folder.close();
  }

  private static PortableTrip read(Path file, PrivateFolder folder) throws LibraryException {
    TripLibrary library = TripLibrary.open(folder.path());
    try {
      TripSummary trip = onlyTrip(file, library);
      // Read once to the end: what is wrong with a trip shows now, and not half-way into a library.
      requireWhole(file, library.damage(trip.id()));
      Vehicle vehicle = library.vehicleOf(trip.id());
      Vehicle own = library.vehicle(vehicle.name()).orElse(vehicle);
      return new PortableTrip(folder, library, trip, vehicle, own);
    } catch (LibraryException e) {
      library.close();
      throw e.reason() == Reason.DAMAGED ? unreadable(file, e) : e;
    } catch (IllegalArgumentException | DateTimeException | ArithmeticException e) {
      library.close();
      throw unreadable(file, e);
    }
  }

  private static void requireWhole(Path file, TripDamage damage) throws LibraryException {
    if (!damage.isNone()) {
      throw ForeignFile.refusal(
          Reason.DAMAGED, file, "a damaged file (" + damage.samples() + " samples cannot be read)");
    }
  }

  private static TripSummary onlyTrip(Path file, TripLibrary library) throws LibraryException {
    List<TripSummary> trips = library.trips(Optional.empty());
    if (trips.size() != 1) {
      throw ForeignFile.refusal(
          Reason.NOT_A_LIBRARY, file, "a library of " + trips.size() + " trips");
    }
    return trips.getFirst();
  }

  private static LibraryException unreadable(Path file, Exception cause) {
    return ForeignFile.refusal(
        Reason.DAMAGED, file, "a damaged file (" + cause.getMessage() + ")", cause);
  }

  private static PrivateFolder folder(Path file) throws LibraryException {
    try {
      return PrivateFolder.make();
    } catch (IOException e) {
      throw LibraryFault.of("make a private copy of the trip file", file, e);
    }
  }

  private static Path copy(Path file, PrivateFolder folder) throws LibraryException {
    try {
      return Files.copy(file, LibraryFile.in(folder.path()));
    } catch (IOException e) {
      folder.close();
      throw LibraryFault.of("make a private copy of the trip file", file, e);
    }
  }

  private static long endMicros(TripSummary trip) {
    return Math.round(trip.durationSeconds() * MICROS_PER_SECOND);
  }
}
