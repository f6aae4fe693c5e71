package steadypull.cli;

import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import steadypull.drive.CodesOfTrip;
import steadypull.review.TripClimbs;
import steadypull.road.climb.ClimbCollection;
import steadypull.store.TripLibrary;
import steadypull.store.TripSummary;

/** Tells the climbs of a trip. */
@Command(
    name = "climbs",
    mixinStandardHelpOptions = true,
    header = "Tells the climbs of a trip, and what each asked of the vehicle.",
    description = {
      "A climb rises 40 m or more over 500 m or more, by 2 %% or more on average; a dip or 600 m of"
          + " level road end it. One that was driven again, by whichever vehicle, has the same id;"
          + " the way down is none. Needs vehicle speed, and a receiver's altitude or the torque"
          + " and mass of the rig.",
      "The power that it holds for good is what the trip has shown of the vehicle's heat: the most"
          + " at the wheels, at the climb's speed, gear and outside temperature, at which no"
          + " channel settles over its limit; in brackets where it lies four times in five."
    })
final class ClimbsCommand implements Callable<Integer> {
  @ParentCommand private @Nullable SteadypullCommand parent;

  @Parameters(paramLabel = "TRIP", description = "Id of the trip, or a unique beginning of it.")
  private String trip = "";

  @Option(names = "--json", description = "Prints an array of objects for machines.")
  private boolean json;

  @Override
  public Integer call() throws Exception {
    SteadypullCommand main = Parents.require(parent);
    try (TripLibrary library = main.openLibraryToRead()) {
      TripSummary found = library.find(trip);
      TripClimbs climbs =
          TripClimbs.of(
              library,
              found.id(),
              new ClimbCollection(library.roads().climbs()),
              new CodesOfTrip());
      main.out()
          .print(
              json
                  ? ClimbJson.of(found.id(), climbs.climbs()) + "\n"
                  : ClimbText.of(climbs.climbs(), main.format()));
      main.out().flush();
      if (climbs.onRollers() > 0) {
        main.err().println(ClimbText.leftOut(climbs.onRollers()));
      } else if (climbs.climbs().isEmpty()) {
        main.err().println(ClimbText.whyNone(found.id(), climbs.road()));
      }
      if (climbs.undecided() > 0) {
        main.err().println(ClimbText.undecided(climbs.undecided()));
      }
    }
    return 0;
  }
}
