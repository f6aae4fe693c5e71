package steadypull.cli;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import steadypull.advice.RuleBook;
import steadypull.drive.DriveWords;
import steadypull.drive.Rehearsal;
import steadypull.exchange.TransferWatch;
import steadypull.store.LibraryException;
import steadypull.store.TripLibrary;
import steadypull.store.TripSummary;
import steadypull.vehicle.Vehicle;

/** Runs recorded trips as the live drive would, and scores what it says against what came. */
@Command(
    name = "rehearse",
    mixinStandardHelpOptions = true,
    header = "Scores how well derates on recorded trips would be warned of.",
    description = {
      "Runs the trips, all of the library if none is named, exactly as the live drive would, with"
          + " what each was told of the road. A warning counts if it stood from at least 5 s before"
          + " the derate began; it was false if its channel did not come within 2 degC of its limit"
          + " in 180 s (engine coolant, oils, gearbox 600 s). The first two minutes of a trip do"
          + " not count. Trips on which the driver eased the load within a minute of advice are"
          + " counted apart: what was foretold could not come. Beside it stand a fixed threshold, 5"
          + " degC below the limit, and a straight line through the last 60 s, looking 120 s ahead."
          + " With --rules the rules of the file are scored, the ones in force beside them, and"
          + " what the file changes is listed trip by trip."
    })
final class RehearseCommand implements Callable<Integer> {
  @ParentCommand private @Nullable SteadypullCommand parent;

  @Parameters(
      arity = "0..*",
      paramLabel = "TRIP",
      description = "Ids of trips, or unique beginnings of them; all trips if none is named.")
  private List<String> named = new ArrayList<>();

  @Mixin private RulesOption rules = new RulesOption();

  @Option(names = "--json", description = "Prints an object for machines.")
  private boolean json;

  @Override
  public Integer call() throws Exception {
    SteadypullCommand main = Parents.require(parent);
    RuleBook inForce = RulesInForce.read(main, /* mayWrite= */ false);
    Optional<RuleBook> changed = rules.changed(inForce);
    Judges judges =
        new Judges(
            main.words(changed.orElse(inForce)),
            changed.map(_ -> main.words(inForce)),
            new RehearsalScores(),
            new RuleChanges());
    try (TripLibrary library = main.openLibraryToRead()) {
      List<TripSummary> trips = trips(library);
      int status = rehearse(main, judges, library, trips);
      main.out().print(told(main, judges, trips.isEmpty()));
      main.out().flush();
      if (trips.isEmpty()) {
        main.err().println("No trips in " + main.libraryFolder() + " to rehearse.");
      }
      return status;
    }
  }

  /**
   * By which rules trips are judged, and what came of it.
   *
   * @param words by which they are judged
   * @param inForce the rules in force beside them, where others were named
   * @param scores of the trips so far
   * @param changes what is said otherwise
   */
  private record Judges(
      DriveWords words,
      Optional<DriveWords> inForce,
      RehearsalScores scores,
      RuleChanges changes) {}

  private String told(SteadypullCommand main, Judges judges, boolean isEmpty) {
    Optional<RuleChanges> changes = judges.inForce().map(_ -> judges.changes());
    if (json) {
      return RehearseText.json(judges.scores(), changes) + "\n";
    }
    return RehearseText.table(judges.scores())
        + changes.filter(_ -> !isEmpty).map(each -> each.text(main.format())).orElse("");
  }

  private static void judge(Judges judges, TripLibrary library, TripSummary trip)
      throws LibraryException {
    Vehicle vehicle = library.vehicleOf(trip.id());
    Rehearsal.Rehearsed run = Rehearsal.of(judges.words().setup(vehicle, false), library, trip);
    judges.scores().add(run);
    if (judges.inForce().isPresent()) {
      Rehearsal.Rehearsed beside =
          Rehearsal.of(judges.inForce().get().setup(vehicle, false), library, trip);
      judges.scores().addInForce(beside);
      judges.changes().add(trip, run, beside);
    }
  }

  /** Each trip once, however often it was named. */
  private List<TripSummary> trips(TripLibrary library) throws Exception {
    if (named.isEmpty()) {
      return library.trips(Optional.empty());
    }
    Map<String, TripSummary> found = new LinkedHashMap<>();
    for (String each : named) {
      TripSummary trip = library.find(each);
      found.put(trip.id(), trip);
    }
    return List.copyOf(found.values());
  }

  private static int rehearse(
      SteadypullCommand main, Judges judges, TripLibrary library, List<TripSummary> trips)
      throws Exception {
    TransferProgress progress = new TransferProgress(main.err());
    TransferWatch watch = progress.watch("Rehearsing", Math.max(1, trips.size()));
    int status = 0;
    try (var _ = StopSignals.call(progress::stop)) {
      for (int i = 0; i < trips.size(); i++) {
        if (!watch.goesOn(i)) {
          throw new CommandFailure(
              "Stopped rehearsing after %d of %d trips, as asked. Nothing was changed."
                  .formatted(i, trips.size()));
        }
        TripSummary trip = trips.get(i);
        judge(judges, library, trip);
        status = Math.max(status, DamageWords.tell(main, library.damage(trip.id())));
      }
    } finally {
      progress.finish();
    }
    return status;
  }
}
