package steadypull.drive;

import java.util.Objects;

/**
 * The link as one line.
 *
 * @param state where it stands
 * @param samplesPerSecond over the last 5 s of the trip
 * @param freshChannels channels heard within their due time
 * @param expectedChannels channels that the vehicle offers and the drive asks for
 * @param detail adapter and protocol while connected, the reason while lost; may be empty
 */
public record LinkSummary(
    State state, double samplesPerSecond, int freshChannels, int expectedChannels, String detail) {
  public LinkSummary {
    Objects.requireNonNull(state);
    Objects.requireNonNull(detail);
  }

  /** Where the link stands. */
  public enum State {
    OPENING,
    SEARCHING,
    CONNECTED,
    /** The adapter answers, and nobody on the vehicle's bus does. */
    VEHICLE_SILENT,
    /** The adapter answers, and the vehicle's bus does not carry. */
    BUS_FAULT,
    /** The adapter answers, and the vehicle's bus never falls quiet. */
    BUS_BUSY,
    /** The adapter answers, and says itself that it is broken. */
    ADAPTER_FAULT,
    /** The vehicle is left alone until its engine is started. */
    ENGINE_OFF,
    LOST,
    CLOSED
  }
}
