package steadypull.cli;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import steadypull.exchange.ImportedTable;
import steadypull.exchange.TripTable;
import steadypull.exchange.VehicleFile;
import steadypull.store.NewTrip;
import steadypull.store.TripLibrary;
import steadypull.vehicle.Vehicle;

/** Takes trip tables into the library, each whole or not at all. */
@Command(
    name = "import",
    mixinStandardHelpOptions = true,
    description =
        "Takes trip tables (CSV) into the library and prints each new trip's id on a line.")
final class ImportCommand implements Callable<Integer> {
  @ParentCommand private @Nullable SteadypullCommand parent;

  @Parameters(paramLabel = "FILE", arity = "1..*", description = "Trip tables.")
  private List<Path> files = new ArrayList<>();

  @Option(
      names = "--vehicle",
      paramLabel = "NAME",
      description = "Whose drives they are; a new name makes a new vehicle.")
  private @Nullable String vehicle;

  @Option(names = "--rig", paramLabel = "RIG.json", description = "What the vehicle towed.")
  private @Nullable Path rig;

  @Option(names = "--label", paramLabel = "TEXT", description = "Run label, such as baseline.")
  private String label = "";

  @Override
  public Integer call() throws Exception {
    SteadypullCommand main = Parents.require(parent);
    // Every file is read before the first is taken: a fault in the last leaves the library as it
    // was.
    List<ImportedTable> tables = new ArrayList<>();
    for (Path file : files) {
      tables.add(TripTable.read(file));
    }
    try (TripLibrary library = main.openLibrary()) {
      for (int each = 0; each < tables.size(); each++) {
        main.out().println(take(main, library, files.get(each), tables.get(each)));
        main.out().flush();
      }
    }
    return 0;
  }

  private String take(SteadypullCommand main, TripLibrary library, Path file, ImportedTable table)
      throws Exception {
    Vehicle known = vehicleFor(library, table);
    library.save(known);
    Vehicle towing = rig == null ? known : known.withRig(VehicleFile.readRig(rig));
    Instant start = main.program().wall().instant();
    NewTrip trip =
        new NewTrip(towing, start, label, file.getFileName().toString(), main.program().version());
    return library.keep(trip, table.samples(), table.endMicros());
  }

  private Vehicle vehicleFor(TripLibrary library, ImportedTable table) throws Exception {
    String name = vehicle == null ? "Imported" : vehicle;
    Optional<Vehicle> known = library.vehicle(name);
    return known.isPresent() ? known.get() : TableVehicle.of(name, table.samples());
  }
}
