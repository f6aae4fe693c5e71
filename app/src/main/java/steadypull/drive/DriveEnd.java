package steadypull.drive;

import java.time.Duration;
import java.util.Optional;

/**
 * When a drive ends by itself.
 *
 * @param after length of the trip; empty means not by time
 * @param whenVehicleSilent whether it ends when a vehicle that was heard has fallen silent
 */
public record DriveEnd(Optional<Duration> after, boolean whenVehicleSilent) {
  /** Never by itself. */
  public static DriveEnd never() {
    return new DriveEnd(Optional.empty(), false);
  }

  long afterMicros() {
    return after.map(span -> span.toNanos() / 1000).orElse(Long.MAX_VALUE);
  }
}
