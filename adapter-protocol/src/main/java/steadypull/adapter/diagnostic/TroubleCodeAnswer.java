package steadypull.adapter.diagnostic;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import steadypull.adapter.frame.Payload;

/** Reads answers to services 03, 07 and 0A (SAE J1979 / ISO 15031-5). Stateless. */
public final class TroubleCodeAnswer {
  private static final int POSITIVE = 0x40;
  private static final int BYTES_PER_CODE = 2;

  /** On older buses a message has room for three codes; unused room is zero. */
  private static final int BYTES_BEFORE_CAN = 6;

  private TroubleCodeAnswer() {}

  /**
   * Reads one message of one control unit.
   *
   * @param status what was asked for
   * @param isCan on CAN a byte with the number of codes follows the service, on older buses the
   *     codes follow at once, always three
   * @return the codes in their order, each once, perhaps none; empty if the message is no answer to
   *     this or its length is not what it says
   */
  public static Optional<List<TroubleCode>> read(
      CodeStatus status, boolean isCan, Payload message) {
    if (!message.startsWith(POSITIVE + status.service())) {
      return Optional.empty();
    }
    Optional<Payload> codes = isCan ? counted(message) : fixed(message);
    return codes.map(TroubleCodeAnswer::codes);
  }

  private static Optional<Payload> counted(Payload message) {
    boolean isWhole = message.size() >= 2 && message.size() == 2 + message.at(1) * BYTES_PER_CODE;
    return isWhole ? Optional.of(message.from(2)) : Optional.empty();
  }

  private static Optional<Payload> fixed(Payload message) {
    return message.size() == 1 + BYTES_BEFORE_CAN ? Optional.of(message.from(1)) : Optional.empty();
  }

  private static List<TroubleCode> codes(Payload bytes) {
    Set<TroubleCode> codes = new LinkedHashSet<>();
    for (int at = 0; at + 1 < bytes.size(); at += BYTES_PER_CODE) {
      TroubleCode.of(bytes.at(at), bytes.at(at + 1)).ifPresent(codes::add);
    }
    return List.copyOf(codes);
  }
}
