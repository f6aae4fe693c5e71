package steadypull.adapter.diagnostic;

import java.util.Map;
import steadypull.adapter.frame.Payload;

/** Takes messages apart according to what was asked. Stateless. */
public final class Answers {
  private static final int POSITIVE_CURRENT_DATA = 0x41;
  private static final int POSITIVE_IDENTIFIER = 0x62;
  private static final int NEGATIVE = 0x7F;

  private Answers() {}

  /**
   * Reads the answer to a request for one parameter; its length is whatever came.
   *
   * @param parameter what was asked
   * @param message a whole message of one control unit
   */
  public static Answer toOne(int parameter, Payload message) {
    if (message.startsWith(POSITIVE_CURRENT_DATA, parameter) && message.size() > 2) {
      return new Answer.CurrentData(Map.of(parameter, message.from(2)));
    }
    return toOther(0x01, message);
  }

  /** Reads the answer to a service 22 request for one identifier, 0 to 0xFFFF. */
  public static Answer toIdentifier(int identifier, Payload message) {
    if (message.startsWith(POSITIVE_IDENTIFIER, identifier >> 8, identifier & 0xFF)) {
      return new Answer.IdentifiedData(message.from(3));
    }
    return toOther(0x22, message);
  }

  private static Answer toOther(int service, Payload message) {
    return message.size() == 3 && message.startsWith(NEGATIVE, service)
        ? new Answer.Refused(NegativeCode.of(message.at(2)))
        : new Answer.Stray();
  }
}
