package steadypull.drive;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import steadypull.store.TripEvent;

/**
 * Events of a trip that was not driven through this room, in the form in which a drive keeps its
 * own. Stateless.
 */
public final class TripStory {
  private static final ObjectMapper JSON = new ObjectMapper();

  private TripStory() {}

  /**
   * The vehicle answers from now on.
   *
   * @param timeMicros microseconds since trip start
   * @param detail adapter and protocol
   * @param channels how many channels the vehicle offers
   */
  public static TripEvent connected(long timeMicros, String detail, int channels) {
    return new LinkEvent(timeMicros, LinkSummary.State.CONNECTED, detail, channels).toTripEvent();
  }

  /** The adapter does not answer any more. */
  public static TripEvent lost(long timeMicros, String reason) {
    return new LinkEvent(timeMicros, LinkSummary.State.LOST, reason, 0).toTripEvent();
  }

  /** A person marked the moment. */
  public static TripEvent mark(long timeMicros, String text) {
    return new TripEvent(timeMicros, TripEvent.Kind.MARK, text);
  }

  /**
   * A control unit told its trouble codes.
   *
   * @param status {@code stored} or {@code pending}
   * @param codes such as P026A; may be empty
   * @param controlUnit address of the control unit, such as 7E8
   */
  public static TripEvent codes(
      long timeMicros, String status, List<String> codes, String controlUnit) {
    ObjectNode node = JSON.createObjectNode().put("status", status);
    node.putArray("told_by").add(controlUnit);
    ArrayNode told = node.putArray("codes");
    codes.forEach(code -> told.addObject().put("code", code).put("control_unit", controlUnit));
    return new TripEvent(timeMicros, TripEvent.Kind.CODES, node.toString());
  }
}
