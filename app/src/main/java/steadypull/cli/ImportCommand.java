package steadypull.cli;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import steadypull.exchange.IncomingFile;
import steadypull.exchange.MappingProposal;
import steadypull.exchange.MappingText;
import steadypull.exchange.VehicleFile;
import steadypull.store.TripDetails;
import steadypull.store.TripLibrary;
import steadypull.vehicle.Rig;

/** Takes files into the library, all of them or none. */
@Command(
    name = "import",
    mixinStandardHelpOptions = true,
    header = "Takes trip tables (CSV), trip files and routes (GPX) into the library.",
    description =
        "Prints each trip's or route's id on a line. A file is taken whole or not at all; a fault"
            + " in one of several leaves the library as it was. A trip file (.trip) whose trip is"
            + " here already leaves it one trip. Tables of other programs come in through a"
            + " mapping: --propose-map writes a first guess, --map takes it, and the library keeps"
            + " it for tables with the same header line. Packed tables (gzip) are read as they are."
            + " Ctrl-C ends it; nothing is taken then.")
final class ImportCommand implements Callable<Integer> {
  @ParentCommand private @Nullable SteadypullCommand parent;

  @Parameters(
      paramLabel = "FILE",
      arity = "1..*",
      description = "Trip tables, trip files and routes; demo:season for the demo season.")
  private List<String> files = new ArrayList<>();

  @Option(
      names = "--vehicle",
      paramLabel = "NAME",
      converter = PlainText.Name.class,
      description = "Whose drives they are; a new name makes a new vehicle.")
  private @Nullable String vehicle;

  @Option(names = "--rig", paramLabel = "RIG.json", description = "What the vehicle towed.")
  private @Nullable Path rig;

  @Mixin private DetailOptions details = new DetailOptions();

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
      names = "--zone",
      paramLabel = "ZONE",
      converter = ZoneOption.class,
      description = ZoneOption.DESCRIPTION)
  private @Nullable ZoneId zone;

  @Option(
      names = "--again",
      description = "Also takes a table that was imported before; it becomes one more trip.")
  private boolean again;

  @Option(
      names = "--start",
      paramLabel = "MOMENT",
      converter = StartOption.class,
      description = {
        "When the trip started, such as 2026-07-15T17:45:12Z;",
        "else the table tells it, or the time of the file."
      })
  private @Nullable OffsetDateTime start;

  @Override
  public Integer call() throws Exception {
    SteadypullCommand main = Parents.require(parent);
    refuseContradictions(main);
    if (proposeMap) {
      main.out().print(MappingProposal.of(path(main, files.getFirst())));
    } else {
      take(main);
    }
    main.out().flush();
    return 0;
  }

  private void refuseContradictions(SteadypullCommand main) {
    if (proposeMap && (files.size() > 1 || map != null)) {
      throw Misuse.of(
          main,
          "import",
          "one FILE and no --map beside --propose-map",
          "more",
          "Propose one mapping after the other");
    }
    if (start != null && files.size() > 1) {
      throw Misuse.of(
          main,
          "import",
          "one FILE beside --start",
          files.size() + " files",
          "Import them one after the other");
    }
    refuseVehicle(main);
  }

  private void take(SteadypullCommand main) throws Exception {
    Optional<Rig> towed = rig == null ? Optional.empty() : Optional.of(VehicleFile.readRig(rig));
    Optional<MappingText> mapping = TableOpening.mapping(map);
    String name = vehicle == null ? "Imported" : vehicle;
    TripDetails said = details.applyTo(TripDetails.NONE);
    try (TripLibrary library = main.openLibrary();
        IncomingTrips trips = new IncomingTrips(main.err(), details::applyTo)) {
      TableImport tables =
          new TableImport(
              main,
              library,
              new TableImport.Wishes(
                  name,
                  towed,
                  said,
                  mapping,
                  Optional.ofNullable(zone),
                  Optional.ofNullable(start),
                  again));
      // Every file is opened before the first is taken.
      List<Taking> opened = new ArrayList<>();
      for (String file : files) {
        opened.add(open(main, file, tables, trips));
      }
      IdleOptions.words(main, opened.stream().map(Taking::kind).collect(Collectors.toSet()))
          .forEach(main.err()::println);
      List<String> ids = take(library, opened, tables);
      tables.keepMapping();
      ids.forEach(main.out()::println);
      main.out().flush();
      new RoadLessons(library.roads(), main.err()).learn();
      new HeatLearned(library.heat(), main.err()).learn();
    }
  }

  /** The one place where a file's kind leads to who takes it. */
  private static Taking open(
      SteadypullCommand main, String name, TableImport tables, IncomingTrips trips)
      throws Exception {
    if (SeasonImport.isMeant(name)) {
      return SeasonImport.of(main.program(), name);
    }
    return switch (IncomingFile.of(path(main, name))) {
      case IncomingFile.Table(Path table) -> tables.open(table);
      case IncomingFile.Trip(Path trip) -> trips.open(trip);
      case IncomingFile.Route(Path route) -> RouteImport.open(route, main.err());
    };
  }

  private static Path path(SteadypullCommand main, String name) {
    try {
      return Path.of(name);
    } catch (InvalidPathException e) {
      throw Misuse.of(main, "import", "the name of a file", Printable.line(name), "Correct it");
    }
  }

  private static List<String> take(TripLibrary library, List<Taking> opened, TableImport tables)
      throws Exception {
    try (var _ = StopSignals.call(tables::stop)) {
      return library.<List<String>, Exception>addTrips(
          adder -> {
            List<String> ids = new ArrayList<>();
            for (Taking each : opened) {
              ids.addAll(each.into(adder));
            }
            return ids;
          });
    } finally {
      tables.finish();
    }
  }

  private void refuseVehicle(SteadypullCommand main) {
    if ((vehicle != null || rig != null || start != null)
        && files.stream().anyMatch(file -> isTripFile(main, file))) {
      throw Misuse.of(
          main,
          "import",
          "trip tables alone beside --vehicle, --rig and --start",
          "a trip file, which brings its own vehicle and start",
          "Leave these options away, or import the trip file by itself");
    }
  }

  private static boolean isTripFile(SteadypullCommand main, String name) {
    return !SeasonImport.isMeant(name)
        && IncomingFile.of(path(main, name)) instanceof IncomingFile.Trip;
  }
}
