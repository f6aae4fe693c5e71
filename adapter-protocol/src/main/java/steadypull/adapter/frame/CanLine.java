package steadypull.adapter.frame;

import java.util.HexFormat;
import java.util.Optional;

/**
 * One CAN frame as an adapter prints it.
 *
 * @param identifier hex digits of the identifier
 * @param segment what its bytes are
 */
record CanLine(String identifier, Segment segment) {
  private static final int MOST_BYTES = 8;

  /**
   * Splits a line into identifier and bytes.
   *
   * @return empty if the line is not such a frame
   */
  static Optional<CanLine> parse(String line, int identifierDigits) {
    int dataDigits = line.length() - identifierDigits;
    if (dataDigits < 2 || dataDigits > 2 * MOST_BYTES || dataDigits % 2 != 0) {
      return Optional.empty();
    }
    if (!line.chars().allMatch(HexFormat::isHexDigit)) {
      return Optional.empty();
    }
    Payload bytes = Payload.ofHex(line.substring(identifierDigits));
    return Optional.of(new CanLine(line.substring(0, identifierDigits), Segment.parse(bytes)));
  }
}
