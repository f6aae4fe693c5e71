package steadypull.drive;

import java.time.Instant;
import steadypull.exchange.SampleSource;
import steadypull.store.LibraryException;
import steadypull.store.TripEntry;
import steadypull.store.TripLibrary;
import steadypull.store.TripSummary;

/**
 * Runs a finished trip or a table through the pipeline of the live drive, on the trip's own clock.
 * No sample is seen before its time. The calling thread does the work.
 */
public final class Replay {
  private final DriveSetup setup;
  private final PipelineOutput output;

  /** A replay for one vehicle under one set of rules. */
  public Replay(DriveSetup setup, PipelineOutput output) {
    this.setup = setup;
    this.output = output;
  }

  /**
   * Repeats a trip of the library, its link states and the driver's answers included.
   *
   * @return the end of the trip, microseconds since its start
   * @throws LibraryException if the trip cannot be read
   */
  public long run(TripLibrary library, TripSummary trip) throws LibraryException {
    DrivePipeline pipeline = new DrivePipeline(setup, trip.start(), output);
    library.replay(trip.id(), pipeline::accept);
    return finish(pipeline, Math.round(trip.durationSeconds() * 1e6));
  }

  /**
   * Runs the samples of a table, which carries no link states: its link counts as connected. They
   * are heard as they are poured out, never held.
   *
   * @param samples in order of time
   * @return the time of the last sample, microseconds since the start of the table
   */
  public <X extends Exception> long run(SampleSource<X> samples) throws X {
    DrivePipeline pipeline = new DrivePipeline(setup, Instant.EPOCH, output);
    LinkEvent connected = new LinkEvent(0, LinkSummary.State.CONNECTED, "", 0);
    pipeline.accept(new TripEntry.OfEvent(connected.toTripEvent()));
    samples.pourInto(sample -> pipeline.accept(new TripEntry.OfSample(sample)));
    return finish(pipeline, pipeline.nowMicros());
  }

  private static long finish(DrivePipeline pipeline, long endMicros) {
    pipeline.advanceTo(endMicros);
    return pipeline.nowMicros();
  }
}
