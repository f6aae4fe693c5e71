package steadypull.adapter.frame;

import java.util.HexFormat;
import java.util.Optional;

/** Messages of the buses before CAN: three header bytes, data, one check byte. */
final class OlderBusLine {
  private static final int HEADER_BYTES = 3;
  private static final int SOURCE = 2;

  private OlderBusLine() {}

  /** ISO 9141-2 and SAE J1850: priority, target, source, data, check byte. */
  static Optional<Message> parse(String line, Checksum checksum) {
    return bytes(line).filter(bytes -> isIntact(bytes, checksum)).map(OlderBusLine::message);
  }

  /** ISO 14230: the low six bits of the first byte tell the number of data bytes. */
  static Optional<Message> parseWithLength(String line) {
    return bytes(line)
        .filter(bytes -> isIntact(bytes, Checksum.SUM))
        .filter(bytes -> (bytes.at(0) & 0x3F) == bytes.size() - HEADER_BYTES - 1)
        .map(OlderBusLine::message);
  }

  private static Optional<Payload> bytes(String line) {
    boolean isWhole =
        line.length() % 2 == 0
            && line.length() / 2 > HEADER_BYTES + 1
            && line.chars().allMatch(HexFormat::isHexDigit);
    return isWhole ? Optional.of(Payload.ofHex(line)) : Optional.empty();
  }

  private static boolean isIntact(Payload bytes, Checksum checksum) {
    int last = bytes.size() - 1;
    return checksum.of(bytes.slice(0, last)) == bytes.at(last);
  }

  private static Message message(Payload bytes) {
    return new Message(
        "%02X".formatted(bytes.at(SOURCE)), bytes.slice(HEADER_BYTES, bytes.size() - 1));
  }
}
