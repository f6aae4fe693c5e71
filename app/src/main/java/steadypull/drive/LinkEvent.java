package steadypull.drive;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.Objects;
import steadypull.store.TripEvent;

/**
 * A change of the link, as it is kept with the trip. Immutable.
 *
 * @param timeMicros microseconds since trip start
 * @param state where the link stands from now on
 * @param detail adapter and protocol, or the reason of a loss; may be empty
 * @param expectedChannels channels that the vehicle offers; 0 until connected
 */
record LinkEvent(long timeMicros, LinkSummary.State state, String detail, int expectedChannels) {
  private static final ObjectMapper JSON = new ObjectMapper();

  LinkEvent {
    Objects.requireNonNull(state);
    Objects.requireNonNull(detail);
  }

  /** The same state at another time is no change. */
  boolean sameStateAs(LinkEvent other) {
    return state == other.state
        && detail.equals(other.detail)
        && expectedChannels == other.expectedChannels;
  }

  TripEvent toTripEvent() {
    String text =
        JSON.createObjectNode()
            .put("state", state.name())
            .put("detail", detail)
            .put("expected_channels", expectedChannels)
            .toString();
    return new TripEvent(timeMicros, TripEvent.Kind.LINK, text);
  }

  /** Reads what {@link #toTripEvent} wrote; an unreadable text counts as a lost link. */
  static LinkEvent of(TripEvent event) {
    try {
      JsonNode node = JSON.readTree(event.detail());
      return new LinkEvent(
          event.timeMicros(),
          LinkSummary.State.valueOf(node.path("state").asText()),
          node.path("detail").asText(),
          node.path("expected_channels").asInt());
    } catch (JsonProcessingException | IllegalArgumentException unreadable) {
      return new LinkEvent(event.timeMicros(), LinkSummary.State.LOST, event.detail(), 0);
    }
  }
}
