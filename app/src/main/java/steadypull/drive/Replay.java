package steadypull.drive;

import java.time.Instant;
import java.util.Optional;
import steadypull.exchange.SampleSource;
import steadypull.road.RoadSight;
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
  private final Optional<RoadSight> sight;
  private final PipelineOutput output;

  /**
   * A replay for one vehicle under one set of rules, with what the trip has kept of the road ahead.
   */
  public Replay(DriveSetup setup, PipelineOutput output) {
    this(setup, Optional.empty(), output);
  }

  /**
   * A replay that looks ahead.
   *
   * @param setup vehicle, rules and words
   * @param sight knows the road in place of what the trip has kept, used on the calling thread
   *     alone; empty where the latter counts
   * @param output takes what comes out
   */
  public Replay(DriveSetup setup, Optional<RoadSight> sight, PipelineOutput output) {
    this.setup = setup;
    this.sight = sight;
    this.output = output;
  }

  /**
   * Repeats a trip of the library, its link states and the driver's answers included.
   *
   * @return the end of the trip, microseconds since its start
   * @throws LibraryException if the trip cannot be read
   */
  public long run(TripLibrary library, TripSummary trip) throws LibraryException {
    double fall = CoolerFall.percent(library, setup.vehicle(), trip.start());
    DrivePipeline pipeline =
        new DrivePipeline(setup.withCoolerFall(fall), trip.start(), sight, output);
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
    DrivePipeline pipeline = new DrivePipeline(setup, Instant.EPOCH, sight, output);
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
