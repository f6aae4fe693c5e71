package steadypull.demo.bench;

import java.util.HexFormat;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** CAN frames as lines of text: {@code tiiildd..}, or with 29 bits {@code Tiiiiiiiildd..}. */
final class SerialCanLine {
  private static final HexFormat HEX = HexFormat.of().withUpperCase();
  private static final Pattern FRAME =
      Pattern.compile(
          "[tr]([0-7][0-9A-Fa-f]{2})([0-8])([0-9A-Fa-f]*)"
              + "|[TR]([01][0-9A-Fa-f]{7})([0-8])([0-9A-Fa-f]*)");

  private SerialCanLine() {}

  /** Reads a line without its end; empty if it is malformed. Remote frames carry no bytes. */
  static Optional<CanFrame> read(String line, long nanos) {
    Matcher parts = FRAME.matcher(line);
    if (!parts.matches()) {
      return Optional.empty();
    }
    int first = parts.group(1) == null ? 4 : 1;
    boolean isRemote = line.startsWith("r") || line.startsWith("R");
    String data = group(parts, first + 2);
    int length = isRemote ? 0 : Integer.parseInt(group(parts, first + 1));
    return data.length() == 2 * length
        ? Optional.of(
            new CanFrame(nanos, Integer.parseInt(group(parts, first), 16), HEX.parseHex(data)))
        : Optional.empty();
  }

  private static String group(Matcher parts, int number) {
    return Optional.ofNullable(parts.group(number)).orElse("");
  }

  /** Prints a frame, without the line's end. */
  static String of(CanFrame frame, boolean isLong) {
    byte[] data = frame.data();
    String digits = HEX.toHexDigits(frame.identifier());
    String identifier = isLong ? "T" + digits : "t" + digits.substring(5);
    return identifier + data.length + HEX.formatHex(data);
  }
}
