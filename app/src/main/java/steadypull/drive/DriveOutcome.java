package steadypull.drive;

import java.util.Optional;

/**
 * How a live drive ended.
 *
 * @param tripId the trip that was kept; empty if nothing was heard or nothing could be kept
 * @param lastTrouble the last trouble with link or library, one clear message; empty if there was
 *     none
 */
public record DriveOutcome(Optional<String> tripId, Optional<String> lastTrouble) {}
