package steadypull.drive;

import java.util.Optional;

/**
 * How a live drive ended.
 *
 * @param tripId the trip that was kept; empty if nothing was heard or nothing could be kept
 * @param linkTrouble the last trouble with the link, one clear message, even if it was recovered
 *     from; empty if there was none
 * @param unkept why the trip is missing though something was heard, or why its end is missing;
 *     empty if all that was heard is kept
 */
public record DriveOutcome(
    Optional<String> tripId, Optional<String> linkTrouble, Optional<String> unkept) {}
