package steadypull.tablet;

import java.time.Instant;
import java.util.Objects;
import java.util.OptionalLong;

/**
 * The clocks of a machine at one moment. Immutable.
 *
 * @param wall the wall's time, which people and networks set
 * @param monotonicNanos nanoseconds of the clock that nobody sets; whether it goes on while the
 *     machine sleeps depends on the system
 * @param uptimeNanos nanoseconds since the machine was started, sleep included, where that is told
 */
public record ClockReading(Instant wall, long monotonicNanos, OptionalLong uptimeNanos) {
  public ClockReading {
    Objects.requireNonNull(wall);
    Objects.requireNonNull(uptimeNanos);
  }
}
