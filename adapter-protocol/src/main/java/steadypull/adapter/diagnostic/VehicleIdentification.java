package steadypull.adapter.diagnostic;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import steadypull.adapter.frame.Payload;

/** Reads the vehicle identification number from service 09 item 02 answers. Stateless. */
public final class VehicleIdentification {
  /** ISO 3779: seventeen letters and digits without I, O and Q. */
  private static final Pattern NUMBER = Pattern.compile("[A-HJ-NPR-Z0-9]{17}");

  private VehicleIdentification() {}

  /**
   * Puts the number together.
   *
   * @param messages the messages of one control unit: on CAN one with all characters after the
   *     count of items, on older buses five that are numbered and carry four bytes each, the first
   *     padded with zeros
   * @return the number, or empty if the messages do not hold one
   */
  public static Optional<String> read(List<Payload> messages) {
    List<Payload> parts = new ArrayList<>();
    for (Payload message : messages) {
      if (message.size() > 3 && message.startsWith(0x49, 0x02)) {
        parts.add(message);
      }
    }
    parts.sort(Comparator.comparingInt(part -> part.at(2)));
    StringBuilder text = new StringBuilder();
    for (Payload part : parts) {
      text.append(new String(part.from(3).toBytes(), StandardCharsets.US_ASCII));
    }
    String number = text.toString().replace("\0", "");
    return NUMBER.matcher(number).matches() ? Optional.of(number) : Optional.empty();
  }
}
