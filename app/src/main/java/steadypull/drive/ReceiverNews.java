package steadypull.drive;

import java.util.Objects;

/**
 * A change of the satellite receiver. Immutable.
 *
 * @param timeMicros microseconds since trip start
 * @param state where it stands from now on
 * @param detail why it is absent, a whole sentence; else empty
 */
public record ReceiverNews(long timeMicros, State state, String detail) {
  public ReceiverNews {
    Objects.requireNonNull(state);
    Objects.requireNonNull(detail);
  }

  /** Where a receiver stands. */
  public enum State {
    /** It cannot be heard. */
    ABSENT,
    /** It does not know yet where it is. */
    SEARCHING,
    /** It knows where it is. */
    LOCATED,
    /** It knows where it is, but its clock and the link's run apart, so that nobody knows when. */
    OUT_OF_PACE,
    /** It is no longer listened to. */
    CLOSED
  }
}
