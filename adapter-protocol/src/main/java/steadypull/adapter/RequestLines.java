package steadypull.adapter;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import steadypull.adapter.frame.Payload;

/**
 * Writes requests as an adapter takes them: two digits a byte, the number of answer lines, a
 * carriage return. The same array serves every request of a length. Reader thread only.
 */
final class RequestLines {
  private static final byte[] HEX = "0123456789ABCDEF".getBytes(StandardCharsets.US_ASCII);

  /** Seven bytes, the number of answers, the carriage return. */
  private static final int LONGEST_LINE = 16;

  private final byte[][] lines = new byte[LONGEST_LINE + 1][];

  RequestLines() {
    Arrays.setAll(lines, byte[]::new);
  }

  /**
   * The line of a request.
   *
   * @param payload 1 to 7 bytes
   * @param count how many answer lines end the waiting, 1 to 15; 0 to leave it to the adapter
   * @return valid until the next call
   */
  byte[] line(Payload payload, int count) {
    int digits = 2 * payload.size() + (count > 0 ? 1 : 0);
    byte[] line = lines[digits + 1];
    for (int i = 0; i < payload.size(); i++) {
      line[2 * i] = HEX[payload.at(i) >> 4];
      line[2 * i + 1] = HEX[payload.at(i) & 0x0F];
    }
    if (count > 0) {
      line[digits - 1] = HEX[count];
    }
    line[digits] = '\r';
    return line;
  }
}
