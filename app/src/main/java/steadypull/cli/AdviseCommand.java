package steadypull.cli;

import java.nio.file.Path;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import steadypull.advice.AdviceJson;
import steadypull.advice.RuleBook;
import steadypull.channel.Channels;
import steadypull.drive.DriveSetup;
import steadypull.drive.Replay;
import steadypull.exchange.IncomingTable;
import steadypull.exchange.TableException;
import steadypull.exchange.TransferWatch;
import steadypull.exchange.VehicleFile;
import steadypull.road.RoadSight;
import steadypull.store.TripLibrary;
import steadypull.store.TripSummary;
import steadypull.vehicle.Limit;
import steadypull.vehicle.Vehicle;

/** Runs a trip or a table through forecaster and rules exactly as the live drive would. */
@Command(
    name = "advise",
    mixinStandardHelpOptions = true,
    header = "Says what would have been said on a trip, as JSON lines.",
    description =
        "Runs a trip of the library, or a trip table, through the forecaster and the rules exactly"
            + " as the live drive would; no sample is seen before its time. A trip knows of the"
            + " road ahead what it was told on its drive, a table with positions what the library"
            + " remembers.")
final class AdviseCommand implements Callable<Integer> {
  @ParentCommand private @Nullable SteadypullCommand parent;

  @Parameters(paramLabel = "FILE.csv|TRIP", description = "A trip table, or the id of a trip.")
  private String what = "";

  @Option(
      names = "--vehicle",
      paramLabel = "NAME",
      converter = PlainText.Name.class,
      description = "Judges as for this vehicle of the library.")
  private @Nullable String vehicle;

  @Option(
      names = "--limit",
      paramLabel = "id=value",
      converter = LimitOption.class,
      description = "A limit in degC, in place of the vehicle's.")
  private List<Limit> limits = new ArrayList<>();

  @Option(
      names = "--map",
      paramLabel = "MAP.toml",
      converter = PlainText.Place.class,
      description = "How to read a table of another program.")
  private @Nullable Path map;

  @Option(
      names = "--zone",
      paramLabel = "ZONE",
      converter = ZoneOption.class,
      description = ZoneOption.DESCRIPTION)
  private @Nullable ZoneId zone;

  @Option(names = "--rig", paramLabel = "RIG.json", description = "What was towed.")
  private @Nullable Path rig;

  @Mixin private RulesOption rules = new RulesOption();

  @Mixin private RoadOptions road = new RoadOptions();

  @Option(
      names = "--forecasts",
      paramLabel = "SECONDS",
      converter = ForecastInterval.class,
      description = "Also prints the forecasts, every so many seconds.")
  private @Nullable Integer forecastSeconds;

  @Override
  public Integer call() throws Exception {
    SteadypullCommand main = Parents.require(parent);
    RuleBook inForce = rules.inForce(main);
    return TripOrTable.isTable(what) ? table(main, inForce, Path.of(what)) : trip(main, inForce);
  }

  /** A table is read to its end before the first word, so that a faulty one says nothing else. */
  private int table(SteadypullCommand main, RuleBook inForce, Path file) throws Exception {
    TableOpening.Opened opened =
        new TableOpening(
                TableOpening.mapping(map),
                Optional.ofNullable(zone),
                line -> TableOpening.kept(main, line))
            .open(file);
    opened.words().ifPresent(words -> main.err().println(opened.name() + ": " + words));
    IncomingTable table = opened.table();
    Vehicle found = TableVehicle.ofWhole("table", table);
    table.clockWords().forEach(words -> main.err().println(opened.name() + ": " + words));
    Vehicle base = vehicle == null ? found : named(main);
    boolean hasPositions = hasPositions(table);
    if (!road.remembers(hasPositions)) {
      run(main, replay(main, inForce, base, Optional.of(road.ofTable(main, hasPositions))), table);
      return 0;
    }
    try (TripLibrary library = main.openLibraryToRead()) {
      RoadSight sight = road.ofTable(main, file, library);
      run(main, replay(main, inForce, base, Optional.of(sight)), table);
      return 0;
    }
  }

  private static void run(SteadypullCommand main, Replay replay, IncomingTable table)
      throws TableException {
    end(main, replay.<TableException>run(taker -> table.read(taker::accept, TransferWatch.NONE)));
  }

  private static boolean hasPositions(IncomingTable table) throws TableException {
    return table.hasSampleOf(Channels.LATITUDE) && table.hasSampleOf(Channels.LONGITUDE);
  }

  private int trip(SteadypullCommand main, RuleBook inForce) throws Exception {
    if (map != null || zone != null) {
      throw Misuse.of(
          main,
          "advise",
          "a table behind --map and --zone",
          "the trip " + Printable.line(what),
          "Leave the options away, or name a table");
    }
    try (TripLibrary library = main.openLibraryToRead()) {
      TripSummary trip = library.find(what);
      Vehicle base = vehicle == null ? library.vehicleOf(trip.id()) : named(main);
      Optional<RoadSight> sight = road.ofTrip(main, trip.channels().contains(Channels.LATITUDE));
      end(main, replay(main, inForce, base, sight).run(library, trip));
      return DamageWords.tell(main, library.damage(trip.id()));
    }
  }

  private static void end(SteadypullCommand main, long endMicros) {
    main.out().println(AdviceJson.end(endMicros));
    main.out().flush();
  }

  private Vehicle named(SteadypullCommand main) throws Exception {
    return KnownVehicles.named(main, vehicle == null ? "" : vehicle);
  }

  private Replay replay(
      SteadypullCommand main, RuleBook inForce, Vehicle base, Optional<RoadSight> sight)
      throws Exception {
    Vehicle judged = base;
    for (Limit limit : limits) {
      judged = judged.withLimit(limit);
    }
    if (rig != null) {
      judged = judged.withRig(VehicleFile.readRig(rig));
    }
    DriveSetup setup = main.words(inForce).setup(judged, false);
    return new Replay(
        setup, sight, new AdviceLines(main.out(), Optional.ofNullable(forecastSeconds)));
  }
}
