package steadypull.adapter.diagnostic;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import steadypull.adapter.frame.Payload;

/**
 * What a control unit measured when it stored a trouble code: frame 0 of service 02. Immutable.
 *
 * @param controlUnit address as printed in the message header
 * @param code the code that stored the frame
 * @param values in the table's order; keys begin with {@code 01.} as those of present values do
 */
public record FreezeFrame(String controlUnit, TroubleCode code, List<SignalValue> values) {
  /** Of service 02 in place of the code itself: which code stored the frame. */
  public static final int CODE_PARAMETER = 0x02;

  private static final int POSITIVE = 0x42;
  private static final int FRAME = 0x00;
  private static final int DATA_AT = 3;

  public FreezeFrame {
    Objects.requireNonNull(controlUnit);
    Objects.requireNonNull(code);
    values = List.copyOf(values);
  }

  /** Asks for one parameter of the frame, 0 to 0xFF; hex. */
  public static String request(int parameter) {
    return "02%02X%02X".formatted(parameter, FRAME);
  }

  /**
   * Reads the data of one parameter.
   *
   * @return the bytes after the frame's number, or empty if the message answers something else
   */
  public static Optional<Payload> data(int parameter, Payload message) {
    return message.startsWith(POSITIVE, parameter, FRAME) && message.size() > DATA_AT
        ? Optional.of(message.from(DATA_AT))
        : Optional.empty();
  }

  /** Reads the code that stored the frame; empty if none did or the message is something else. */
  public static Optional<TroubleCode> code(Payload message) {
    return data(CODE_PARAMETER, message)
        .filter(bytes -> bytes.size() == 2)
        .flatMap(bytes -> TroubleCode.of(bytes.at(0), bytes.at(1)));
  }
}
