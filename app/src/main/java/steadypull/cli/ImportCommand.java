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
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import steadypull.exchange.IncomingFile;
import steadypull.exchange.MappingProposal;
import steadypull.exchange.MappingText;
import steadypull.exchange.VehicleFile;
import steadypull.store.TripLibrary;
import steadypull.vehicle.Rig;

/** Takes files into the library, all of them or none. */
@Command(
    name = "import",
    mixinStandardHelpOptions = true,
    header = "Takes trip tables (CSV) into the library.",
    description =
        "Prints each new trip's id on a line. A table is taken whole or not at all; a fault in one"
            + " of several files leaves the library as it was. Tables of other programs come in"
            + " through a mapping: --propose-map writes a first guess, --map takes it, and the"
            + " library keeps it for tables with the same header line. Packed tables (gzip) are"
            + " read as they are. Ctrl-C ends it; nothing is taken then.")
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

  @Option(
      names = "--map",
      paramLabel = "MAP.toml",
      converter = PlainText.Place.class,
      description = "How to read tables of another program.")
  private @Nullable Path map;

  @Option(
      names = "--propose-map",
      description = "Only writes a first guess of a mapping for one FILE, for you to correct.")
  private boolean proposeMap;

  @Option(
      names = "--start",
      paramLabel = "MOMENT",
      converter = StartOption.class,
      description = {
        "When the trip started, such as 2026-07-15T17:45:12Z;",
        "else the table tells it, or the time of the file."
      })
  private @Nullable Instant start;

  @Override
  public Integer call() throws Exception {
    SteadypullCommand main = Parents.require(parent);
    refuseContradictions(main);
    if (proposeMap) {
      main.out().print(MappingProposal.of(files.getFirst()));
    } else if (SeasonImport.isMeant(files.getFirst().toString())) {
      takeSeason(main, files.getFirst().toString()).forEach(main.out()::println);
    } else {
      take(main).forEach(main.out()::println);
    }
    main.out().flush();
    return 0;
  }

  private void refuseContradictions(SteadypullCommand main) {
    if (proposeMap && (files.size() > 1 || map != null)) {
      throw new ParameterException(
          main.commandLine().getSubcommands().get("import"),
          "--propose-map expected one FILE and no --map, found more");
    }
    if (start != null && files.size() > 1) {
      throw new ParameterException(
          main.commandLine().getSubcommands().get("import"),
          "--start expected one FILE, found " + files.size());
    }
  }

  private static List<String> takeSeason(SteadypullCommand main, String address) throws Exception {
    try (TripLibrary library = main.openLibrary()) {
      return SeasonImport.of(main.program(), address).into(library);
    }
  }

  private List<String> take(SteadypullCommand main) throws Exception {
    Optional<Rig> towed = rig == null ? Optional.empty() : Optional.of(VehicleFile.readRig(rig));
    Optional<MappingText> mapping =
        map == null ? Optional.empty() : Optional.of(MappingText.read(map));
    String name = vehicle == null ? "Imported" : vehicle;
    List<Path> tables = tables();
    try (TripLibrary library = main.openLibrary()) {
      return new TableImport(
              main,
              library,
              new TableImport.Wishes(name, towed, label, mapping, Optional.ofNullable(start)))
          .take(tables);
    }
  }

  private List<Path> tables() throws CommandFailure {
    List<Path> tables = new ArrayList<>();
    for (Path file : files) {
      switch (IncomingFile.of(file)) {
        case IncomingFile.Table(Path table) -> tables.add(table);
        case IncomingFile.Trip(Path trip) -> throw notTaken(trip, "a trip file");
        case IncomingFile.Route(Path route) -> throw notTaken(route, "a route or track");
      }
    }
    return tables;
  }

  private static CommandFailure notTaken(Path file, String found) {
    return new CommandFailure(
        "Could not import %s: expected a trip table such as trip.csv, found %s. This version takes trip tables only."
            .formatted(file, found));
  }
}
