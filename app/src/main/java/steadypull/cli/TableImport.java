package steadypull.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import steadypull.exchange.IncomingTable;
import steadypull.exchange.MappingText;
import steadypull.exchange.TableException;
import steadypull.exchange.TripTable;
import steadypull.store.AddedTrip;
import steadypull.store.LibraryException;
import steadypull.store.NewTrip;
import steadypull.store.TripAdder;
import steadypull.store.TripLibrary;
import steadypull.vehicle.Rig;
import steadypull.vehicle.Vehicle;

/** Takes several tables into the library, all of them or none. One thread. */
final class TableImport {
  /**
   * What is said of all tables.
   *
   * @param mapping how to read them, if somebody said
   * @param start when the trips started, if somebody said
   */
  record Wishes(
      String vehicleName,
      Optional<Rig> rig,
      String label,
      Optional<MappingText> mapping,
      Optional<Instant> start) {}

  private record Opened(Path file, String headerLine, IncomingTable table) {
    String name() {
      return String.valueOf(file.getFileName()).replaceAll("\\p{Cntrl}", "?");
    }
  }

  private final SteadypullCommand main;
  private final TripLibrary library;
  private final Wishes wishes;
  private final PrintWriter notes;
  private final TransferProgress progress;

  TableImport(SteadypullCommand main, TripLibrary library, Wishes wishes) {
    this.main = main;
    this.library = library;
    this.wishes = wishes;
    this.notes = main.err();
    this.progress = new TransferProgress(main.err());
  }

  /** Takes the tables; returns the ids of the new trips in their order. */
  List<String> take(List<Path> files) throws Exception {
    List<Opened> opened = new ArrayList<>();
    for (Path file : files) {
      opened.add(open(file));
    }
    Vehicle vehicle = vehicle(opened.getFirst().table());
    List<String> ids = add(opened, vehicle);
    keepMapping(opened);
    return ids;
  }

  private List<String> add(List<Opened> opened, Vehicle vehicle) throws Exception {
    try (var _ = StopSignals.call(progress::stop)) {
      return library.<List<String>, Exception>addTrips(
          adder -> {
            adder.save(vehicle);
            List<String> ids = new ArrayList<>();
            for (Opened each : opened) {
              ids.add(add(adder, each, wishes.rig().map(vehicle::withRig).orElse(vehicle)));
            }
            return ids;
          });
    } finally {
      progress.finish();
    }
  }

  private String add(TripAdder adder, Opened opened, Vehicle vehicle) throws TableException {
    TripStart start = TripStart.of(wishes.start(), opened.table().start(), now());
    AddedTrip trip =
        adder.begin(
            new NewTrip(
                vehicle, start.moment(), wishes.label(), opened.name(), main.program().version()));
    long endMicros =
        opened
            .table()
            .<RuntimeException>read(
                trip::append, progress.watch("Reading " + opened.name(), opened.table().bytes()));
    progress.finish();
    start.words().ifPresent(words -> note(opened, words));
    opened.table().conversions().forEach(each -> note(opened, "Converted " + each + "."));
    opened.table().heldWords().forEach(each -> note(opened, each + "."));
    return trip.seal(endMicros);
  }

  /** Somebody's mapping first, then our own form, then the mapping that was kept for its kind. */
  private Opened open(Path file) throws TableException, LibraryException {
    String headerLine = TripTable.headerLine(file);
    if (wishes.mapping().isPresent()) {
      return mapped(file, headerLine, wishes.mapping().get());
    }
    Optional<String> kept =
        TripTable.isOwnForm(headerLine) ? Optional.empty() : library.mapping(headerLine);
    if (kept.isEmpty()) {
      return new Opened(file, headerLine, TripTable.open(file));
    }
    Opened opened =
        mapped(file, headerLine, new MappingText("kept for this header", kept.get(), false));
    note(opened, "Read by the mapping that was kept for tables of this kind; --map replaces it.");
    return opened;
  }

  private static Opened mapped(Path file, String headerLine, MappingText mapping)
      throws TableException {
    IncomingTable table = TripTable.open(file, mapping, ZoneId.systemDefault());
    return new Opened(file, headerLine, table);
  }

  private void keepMapping(List<Opened> opened) throws LibraryException {
    if (wishes.mapping().isPresent()) {
      for (Opened each : opened) {
        library.keepMapping(each.headerLine(), wishes.mapping().get().toml());
      }
      notes.println(
          "The mapping is kept: tables with the same header line are read by it from now on.");
    }
  }

  private Vehicle vehicle(IncomingTable first) throws LibraryException, TableException {
    Optional<Vehicle> known = library.vehicle(wishes.vehicleName());
    return known.isPresent() ? known.get() : TableVehicle.of(wishes.vehicleName(), first);
  }

  private Instant now() {
    return main.program().wall().instant();
  }

  private void note(Opened opened, String words) {
    notes.println(opened.name() + ": " + words);
  }
}
