package steadypull.cli;

import java.io.PrintWriter;
import java.util.function.Supplier;
import steadypull.advice.AdviceEvent;
import steadypull.drive.DriveSnapshot;
import steadypull.drive.EndedTrip;
import steadypull.drive.PipelineOutput;
import steadypull.drive.RawCapture;
import steadypull.drive.ReceiverNews;
import steadypull.drive.TabletReport;
import steadypull.store.TripEntry;
import steadypull.thermal.Derate;
import steadypull.thermal.Forecast;

/**
 * Prints the id of each trip that ends while the drive goes on. Everything is passed on. Pipeline
 * thread only.
 */
final class EndedTrips implements PipelineOutput {
  private final PrintWriter results;
  private final PrintWriter diagnostics;
  private final PipelineOutput next;

  EndedTrips(PrintWriter results, PrintWriter diagnostics, PipelineOutput next) {
    this.results = results;
    this.diagnostics = diagnostics;
    this.next = next;
  }

  @Override
  public void entry(TripEntry entry) {
    next.entry(entry);
  }

  @Override
  public void advice(AdviceEvent event) {
    next.advice(event);
  }

  @Override
  public void derate(long timeMicros, Derate derate) {
    next.derate(timeMicros, derate);
  }

  @Override
  public void receiver(ReceiverNews news) {
    next.receiver(news);
  }

  @Override
  public void tablet(TabletReport report) {
    next.tablet(report);
  }

  @Override
  public void captured(RawCapture.Kept kept) {
    next.captured(kept);
  }

  @Override
  public void forecast(Forecast forecast) {
    next.forecast(forecast);
  }

  @Override
  public void second(long timeMicros, Supplier<DriveSnapshot> picture) {
    next.second(timeMicros, picture);
  }

  @Override
  public void second(DriveSnapshot snapshot) {
    next.second(snapshot);
  }

  @Override
  public void answered(DriveSnapshot snapshot) {
    next.answered(snapshot);
  }

  @Override
  public void tripEnded(EndedTrip ended) {
    results.println(ended.tripId());
    results.flush();
    diagnostics.println(why(ended.cause()));
    diagnostics.flush();
  }

  private static String why(EndedTrip.Cause cause) {
    return switch (cause) {
      case ENGINE_OFF ->
          "The engine is off, so this trip has ended. The next start begins another; Ctrl-C ends.";
      case BATTERY_NEARLY_EMPTY ->
          "This trip is sealed before the tablet goes off. Recording goes on in another; Ctrl-C"
              + " ends.";
      case LONG_SLEEP ->
          "The tablet slept for long, so this trip has ended. Recording goes on in another; Ctrl-C"
              + " ends.";
    };
  }
}
