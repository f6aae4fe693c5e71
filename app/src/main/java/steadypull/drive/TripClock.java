package steadypull.drive;

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

  /** The same tie, anchored at a later moment. */
  TripClock anchoredAt(long nanoTime) {
    return new TripClock(start.plus(micros(nanoTime), ChronoUnit.MICROS), nanoTime);
  }
}
