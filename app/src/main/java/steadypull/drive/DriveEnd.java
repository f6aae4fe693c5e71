package steadypull.drive;

import java.time.Duration;
import java.util.Optional;

/**
 * When a drive ends by itself.
 *
 * @param after length of the trip; empty means not by time
 * @param isWithScenario whether a simulated drive ends when its scenario does; real ports have no
 *     end of their own
 */
public record DriveEnd(Optional<Duration> after, boolean isWithScenario) {
  /** Never by itself: somebody ends it. */
  public static DriveEnd never() {
    return new DriveEnd(Optional.empty(), false);
  }

  /** With the scenario, if it is a simulated drive; else never. */
  public static DriveEnd withScenario() {
    return new DriveEnd(Optional.empty(), true);
  }

  long afterMicros() {
    return after.map(span -> span.toNanos() / 1000).orElse(Long.MAX_VALUE);
  }
}
