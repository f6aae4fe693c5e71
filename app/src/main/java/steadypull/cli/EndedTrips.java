package steadypull.cli;

import java.io.PrintWriter;
import steadypull.advice.AdviceEvent;
import steadypull.drive.DriveSnapshot;
import steadypull.drive.PipelineOutput;
import steadypull.drive.RawCapture;
import steadypull.drive.ReceiverNews;
import steadypull.store.TripEntry;
import steadypull.thermal.Forecast;

/**
 * Prints the id of each trip that a switched-off engine ends while the drive goes on. Everything is
 * passed on. Pipeline thread only.
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
  public void receiver(ReceiverNews news) {
    next.receiver(news);
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
  public void second(DriveSnapshot snapshot) {
    next.second(snapshot);
  }

  @Override
  public void answered(DriveSnapshot snapshot) {
    next.answered(snapshot);
  }

  @Override
  public void tripEnded(String tripId) {
    results.println(tripId);
    results.flush();
    diagnostics.println(
        "The engine is off, so this trip has ended. The next start begins another; Ctrl-C ends.");
    diagnostics.flush();
  }
}
