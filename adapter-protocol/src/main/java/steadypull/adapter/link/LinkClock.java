package steadypull.adapter.link;

import java.time.Duration;

/**
 * The time that a link lives in. Real ports live in the machine's time; a simulated vehicle may run
 * faster. Everything that stamps, waits or times out asks this clock and no other.
 */
public interface LinkClock {

  /** Nanoseconds since an arbitrary moment, never running backwards. */
  long nanoTime();

  /** Waits for a span of this clock's time. Zero or negative spans return at once. */
  void pause(Duration span) throws InterruptedException;

  /** The machine's own monotonic clock. */
  static LinkClock machine() {
    return MachineClock.INSTANCE;
  }
}
