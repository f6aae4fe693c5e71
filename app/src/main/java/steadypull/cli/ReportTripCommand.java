package steadypull.cli;

import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import steadypull.drive.CodesOfTrip;
import steadypull.drive.TripPicture;
import steadypull.drive.TripView;
import steadypull.drive.TripWindow;
import steadypull.drive.WholeTrip;
import steadypull.report.Letterhead;
import steadypull.report.ReportFile;
import steadypull.report.TripReport;
import steadypull.review.TripClimbs;
import steadypull.road.climb.ClimbCollection;
import steadypull.store.TripLibrary;

/** Prints a trip. */
@Command(
    name = "trip",
    mixinStandardHelpOptions = true,
    header = "Writes a trip: what came nearest to its limit, temperatures, climbs, notes.")
final class ReportTripCommand implements Callable<Integer> {
  @ParentCommand private @Nullable ReportCommand report;

  @Parameters(paramLabel = "TRIP", description = "Id of the trip, or a unique beginning of it.")
  private String trip = "";

  @Mixin private LetterheadOptions letterhead = new LetterheadOptions();

  @Override
  public Integer call() throws Exception {
    SteadypullCommand main = ReportCommand.main(report);
    Letterhead head = letterhead.head(main);
    try (TripLibrary library = main.openLibraryToRead()) {
      WholeTrip whole = WholeTrip.of(library, trip);
      String id = whole.summary().id();
      TripClimbs climbs =
          TripClimbs.of(
              library, id, new ClimbCollection(library.roads().climbs()), new CodesOfTrip());
      ReportFile.write(
          TripReport.of(
              whole, picture(library, whole), climbs.climbs(), head, main.locale(), main.format()),
          letterhead.to());
      main.err().printf("Wrote %s.%n", letterhead.to());
      return DamageWords.tell(main, library.damage(id));
    }
  }

  private static TripPicture picture(TripLibrary library, WholeTrip whole) throws Exception {
    try (TripView view = TripView.of(library, whole)) {
      return view.picture(TripWindow.whole(whole.summary()), TripReport.COLUMNS);
    }
  }
}
