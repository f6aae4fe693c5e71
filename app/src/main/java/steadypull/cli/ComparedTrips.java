package steadypull.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import steadypull.compare.Comparing;
import steadypull.compare.Comparison;
import steadypull.compare.Job;
import steadypull.compare.JobFile;
import steadypull.compare.RunFinding;
import steadypull.compare.RunSet;
import steadypull.compare.RunSource;
import steadypull.compare.TripSeconds;
import steadypull.drive.CalibrationsOfTrip;
import steadypull.exchange.IncomingTable;
import steadypull.store.LibraryException;
import steadypull.store.TripLibrary;
import steadypull.store.TripSummary;
import steadypull.vehicle.Vehicle;

/**
 * Reads the trips and tables that a command names and compares them. The library is opened only
 * where a trip of it is named, or a table needs it. One use.
 */
final class ComparedTrips {
  /**
   * What came of it.
   *
   * @param vehicle on which it was done
   * @param status of the command: 1 if something of a trip could not be read, which was told
   */
  record Found(Comparison comparison, Vehicle vehicle, int status) {}

  private final SteadypullCommand main;
  private final CommandLine command;
  private final CompareOptions options;
  private final List<RunSource> sources = new ArrayList<>();
  private final List<String> read = new ArrayList<>();
  private final Set<String> examined = new HashSet<>();
  private int status;

  ComparedTrips(SteadypullCommand main, CommandLine command, CompareOptions options) {
    this.main = main;
    this.command = command;
    this.options = options;
  }

  /** Reads and compares; nothing is written. */
  Found compare() throws Exception {
    List<SidesOption.Named> named = options.named(command);
    Job job = options.job().isPresent() ? JobFile.read(options.job().get()) : Job.NONE;
    for (SidesOption.Named each : named) {
      read(each);
    }
    RunSet runs = RunFinding.of(sources, options.channel(), job, main.locale());
    Vehicle vehicle =
        runs.runs().isEmpty()
            ? sources.getFirst().trip().vehicle()
            : runs.runs().getLast().vehicle();
    return new Found(
        Comparing.of(runs, options.channel(), vehicle, options.conditions(), main.locale()),
        vehicle,
        status);
  }

  private void read(SidesOption.Named named) throws Exception {
    TripOrTable part = part(named.what());
    TripSeconds seconds = part.isTable() ? table(part) : trip(part);
    String key = seconds.name() + part.span();
    if (read.contains(key)) {
      throw new Misuse(
          command,
          "every trip once",
          Printable.line(named.what()) + " more than once",
          "Leave one away, or name parts of it");
    }
    read.add(key);
    sources.add(new RunSource(seconds, named.side(), named.place(), part.span()));
  }

  private TripOrTable part(String what) {
    try {
      return TripOrTable.of(what);
    } catch (IllegalArgumentException backwards) {
      throw new Misuse(
          command,
          "TRIP@FROM-TO in seconds, the end after the beginning",
          Printable.line(what),
          "Correct it");
    }
  }

  private TripSeconds trip(TripOrTable part) throws LibraryException {
    try (TripLibrary library = main.openLibraryToRead()) {
      TripSummary trip = library.find(part.what());
      if (examined.add(trip.id())) {
        status = Math.max(status, DamageWords.tell(main, library.damage(trip.id())));
      }
      return TripSeconds.ofTrip(library, trip, new CalibrationsOfTrip());
    }
  }

  private TripSeconds table(TripOrTable part) throws Exception {
    Path file = Path.of(part.what());
    TableOpening.Opened opened =
        new TableOpening(
                TableOpening.mapping(options.map().orElse(null)),
                options.zone(),
                line -> TableOpening.kept(main, line))
            .open(file);
    opened.words().ifPresent(words -> main.err().println(opened.name() + ": " + words));
    IncomingTable table = opened.table();
    TripSeconds seconds =
        TripSeconds.ofTable(opened.name(), table, vehicle(table), options.day(part.what()));
    table.clockWords().forEach(words -> main.err().println(opened.name() + ": " + words));
    main.err().flush();
    return seconds;
  }

  private Vehicle vehicle(IncomingTable table) throws Exception {
    @Nullable String name = options.vehicle().orElse(null);
    return name == null ? TableVehicle.of("table", table) : KnownVehicles.named(main, name);
  }
}
