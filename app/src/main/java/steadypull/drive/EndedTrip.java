package steadypull.drive;

import java.util.Objects;

/**
 * A trip that ended while its drive goes on.
 *
 * @param tripId the trip, sealed
 * @param cause why it ended
 */
public record EndedTrip(String tripId, Cause cause) {
  public EndedTrip {
    Objects.requireNonNull(tripId);
    Objects.requireNonNull(cause);
  }

  /** Why a trip ends before its drive. */
  public enum Cause {
    /** The engine has been off for a while. */
    ENGINE_OFF,
    /** The tablet may go off any minute: what was recorded is brought to safety. */
    BATTERY_NEARLY_EMPTY,
    /** The tablet slept for so long that what follows is another drive. */
    LONG_SLEEP
  }
}
