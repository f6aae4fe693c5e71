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
import steadypull.vehicle.Rig;
import steadypull.vehicle.Vehicle;

/** Takes trip tables into the library, each whole or not at all. */
@Command(
    name = "import",
    mixinStandardHelpOptions = true,
    header = "Takes trip tables (CSV) into the library.",
    description =
        "Prints each new trip's id on a line. A table is taken whole or not at all; a fault in one"
            + " of several files leaves the library as it was.")
final class ImportCommand implements Callable<Integer> {
  @ParentCommand private @Nullable SteadypullCommand parent;

  @Parameters(paramLabel = "FILE", arity = "1..*", description = "Trip tables.")
  private List<Path> files = new ArrayList<>();

  @Option(
      names = "--vehicle",
      paramLabel = "NAME",
      converter = PlainText.Name.class,
      description = "Whose drives they are; a new name makes a new vehicle.")
  private @Nullable String vehicle;

  @Option(names = "--rig", paramLabel = "RIG.json", description = "What the vehicle towed.")
  private @Nullable Path rig;

  @Option(
      names = "--label",
      paramLabel = "TEXT",
      converter = PlainText.Label.class,
      description = "Run label, such as baseline.")
  private String label = "";

  @Override
  public Integer call() throws Exception {
    SteadypullCommand main = Parents.require(parent);
    if (SeasonImport.isMeant(files.getFirst().toString())) {
      takeSeason(main, files.getFirst().toString());
      return 0;
    }
    Optional<Rig> towed = rig == null ? Optional.empty() : Optional.of(VehicleFile.readRig(rig));
    // Every file is read before the first is taken: a fault in the last leaves the library as it
    // was.
    List<ImportedTable> tables = new ArrayList<>();
    for (Path file : files) {
      tables.add(TripTable.read(file));
    }
    try (TripLibrary library = main.openLibrary()) {
      for (int each = 0; each < tables.size(); each++) {
        main.out().println(take(main, library, towed, files.get(each), tables.get(each)));
        main.out().flush();
      }
    }
    return 0;
  }

  private static void takeSeason(SteadypullCommand main, String address) throws Exception {
    try (TripLibrary library = main.openLibrary()) {
      SeasonImport.of(main.program(), address).into(library).forEach(main.out()::println);
      main.out().flush();
    }
  }

  private String take(
      SteadypullCommand main,
      TripLibrary library,
      Optional<Rig> towed,
      Path file,
      ImportedTable table)
      throws Exception {
    Vehicle known = vehicleFor(library, table);
    library.save(known);
    Vehicle towing = towed.map(known::withRig).orElse(known);
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
