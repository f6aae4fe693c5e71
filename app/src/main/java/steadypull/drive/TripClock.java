package steadypull.drive;

import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;

/**
 * Ties the link's clock to the wall's: one anchor, set once. Immutable.
 *
 * @param start the wall's time at the anchor
 * @param startNanos the link clock's time at the anchor
 */
record TripClock(Instant start, long startNanos) {

  /** Microseconds from the anchor to a moment on the link's clock; never negative. */
  long micros(long nanoTime) {
    return Math.max(0, (nanoTime - startNanos) / 1000);
  }

  /**
   * The same tie after the link's clock stood still while time passed: what comes from now on lies
   * later in the trip.
   */
  TripClock stoodFor(Duration length) {
    return new TripClock(start, startNanos - length.toNanos());
  }

  /** The same tie after the wall's clock was set, for a trip that is still to begin. */
  TripClock wallSetBy(Duration by) {
    return new TripClock(start.plus(by), startNanos);
  }

  /** The same tie, anchored at a later moment. */
  TripClock anchoredAt(long nanoTime) {
    return new TripClock(start.plus(micros(nanoTime), ChronoUnit.MICROS), nanoTime);
  }
}
