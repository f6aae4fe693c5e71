package steadypull.drive;

import java.util.function.Supplier;
import steadypull.advice.AdviceEvent;
import steadypull.store.TripEntry;
import steadypull.thermal.Derate;
import steadypull.thermal.Forecast;

/**
 * Takes what the pipeline brings forth, in order, on the pipeline's thread. Entries and advice
 * belong to a trip; seconds also pass while a live drive still waits for its first reading.
 */
public interface PipelineOutput {

  /** An entry of the trip: what came in, and what was derived from it. */
  default void entry(TripEntry entry) {}

  /** Something that the rules or the derate detector said. */
  default void advice(AdviceEvent event) {}

  /**
   * Whether torque is taken away, every second, before it is done: with the moment at which that
   * began, which is known some seconds later.
   */
  default void derate(long timeMicros, Derate derate) {}

  /** The satellite receiver of a live drive is found, knows its place, or is gone. */
  default void receiver(ReceiverNews news) {}

  /** The tablet that records has news of itself. */
  default void tablet(TabletReport report) {}

  /** The raw capture of a live drive is complete. */
  default void captured(RawCapture.Kept kept) {}

  /** The forecast of a second, present load held. */
  default void forecast(Forecast forecast) {}

  /**
   * A whole second is done: everything up to it has been handed out. Who does not look overrides
   * this, and no picture is made.
   *
   * @param timeMicros of the second, microseconds since trip start
   * @param picture makes what the screen shows now; to be asked before this returns
   */
  default void second(long timeMicros, Supplier<DriveSnapshot> picture) {
    second(picture.get());
  }

  /**
   * The same for who looks at every second.
   *
   * @param snapshot what the screen shows now
   */
  default void second(DriveSnapshot snapshot) {}

  /**
   * A trip has ended while the drive goes on; the next reading begins another. The trip that ends
   * with the drive is told by the drive's outcome instead.
   */
  default void tripEnded(EndedTrip ended) {}

  /** The advice line has changed between two seconds, by a person's answer. */
  default void answered(DriveSnapshot snapshot) {}
}
