package steadypull.drive;

import java.util.List;
import java.util.Optional;

/**
 * How a live drive ended.
 *
 * @param earlierTripIds trips that ended on the way because the engine was off, oldest first; they
 *     were told when they ended
 * @param tripId the trip that ended with the drive; empty if nothing was heard since the last one
 *     ended, or nothing could be kept
 * @param linkTrouble the last trouble with the link, one clear message, even if it was recovered
 *     from; empty if there was none
 * @param unkept why the trip is missing though something was heard, or why its end is missing;
 *     empty if all that was heard is kept
 */
public record DriveOutcome(
    List<String> earlierTripIds,
    Optional<String> tripId,
    Optional<String> linkTrouble,
    Optional<String> unkept) {
  public DriveOutcome {
    earlierTripIds = List.copyOf(earlierTripIds);
  }

  /** The outcome of a drive that was one trip, or none. */
  public DriveOutcome(
      Optional<String> tripId, Optional<String> linkTrouble, Optional<String> unkept) {
    this(List.of(), tripId, linkTrouble, unkept);
  }

  /** The last trip that was kept; empty if none was. */
  public Optional<String> lastTripId() {
    return tripId.or(() -> earlierTripIds.reversed().stream().findFirst());
  }
}
