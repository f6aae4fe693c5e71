package steadypull.adapter.dialogue;

import java.util.HexFormat;
import java.util.Locale;
import java.util.Objects;

/**
 * What a serial CAN adapter says in one line. The protocol has no check sum: kind, number of digits
 * and digits themselves are all that can be checked, and all of them are. A closed set.
 */
public sealed interface SerialCanLine {

  /**
   * A data frame was on the bus: {@code tiiildd..} or {@code Tiiiiiiiildd..}.
   *
   * @param isLong whether the identifier has 29 bits
   * @param identifier 0 to 7FF or 0 to 1FFFFFFF
   * @param data hex digits of up to eight bytes, upper case
   */
  record Frame(boolean isLong, int identifier, String data) implements SerialCanLine {
    public Frame {
      Objects.requireNonNull(data);
    }
  }

  /** A frame without data asks for one: {@code riiil}. Nobody here answers it. */
  record RemoteFrame() implements SerialCanLine {}

  /** A lone return: the command was obeyed. */
  record Obeyed() implements SerialCanLine {}

  /** A bell: the command was refused. */
  record Refused() implements SerialCanLine {}

  /** {@code z} or {@code Z}: a frame was taken for sending. */
  record Sent() implements SerialCanLine {}

  /**
   * {@code Fxx}.
   *
   * @param flags bit 0 receive queue full, 1 send queue full, 2 error warning, 3 data overrun, 5
   *     error passive, 6 arbitration lost, 7 bus error
   */
  record Status(int flags) implements SerialCanLine {
    private static final int LOST = 0b0000_1001;
    private static final int BUS_FAULT = 0b1010_0100;

    /** Whether frames were lost on the way to this program. */
    public boolean hasLostFrames() {
      return (flags & LOST) != 0;
    }

    /** Whether the adapter sees faults on the bus: another bit rate, nobody there, bad wiring. */
    public boolean hasBusFault() {
      return (flags & BUS_FAULT) != 0;
    }
  }

  /**
   * {@code Vhhss}: versions of hardware and software.
   *
   * @param number four characters
   */
  record Version(String number) implements SerialCanLine {}

  /** {@code Nxxxx}: a serial number. */
  record SerialNumber(String number) implements SerialCanLine {}

  /** Anything else: damaged, cut, or no such adapter at all. */
  record Unreadable(String text) implements SerialCanLine {}

  /** The shape of one line kind with an identifier. */
  private static int identifierDigits(char kind) {
    return kind == 't' || kind == 'r' ? 3 : 8;
  }

  /**
   * Reads a line.
   *
   * @param line without its return; ASCII
   */
  static SerialCanLine parse(String line) {
    if (line.isEmpty()) {
      return new Obeyed();
    }
    char kind = line.charAt(0);
    return switch (kind) {
      case 't', 'T' -> frame(line, kind == 'T', identifierDigits(kind));
      case 'r', 'R' -> remoteFrame(line, identifierDigits(kind));
      case 'z', 'Z' -> line.length() == 1 ? new Sent() : new Unreadable(line);
      case 'F' -> line.matches("F[0-9A-Fa-f]{2}") ? status(line) : new Unreadable(line);
      case 'V' ->
          line.matches("V[0-9A-Za-z]{4}") ? new Version(line.substring(1)) : new Unreadable(line);
      case 'N' ->
          line.matches("N[0-9A-Za-z]{4}")
              ? new SerialNumber(line.substring(1))
              : new Unreadable(line);
      default -> new Unreadable(line);
    };
  }

  private static SerialCanLine status(String line) {
    return new Status(HexFormat.fromHexDigits(line, 1, 3));
  }

  private static SerialCanLine frame(String line, boolean isLong, int identifierDigits) {
    int from = 2 + identifierDigits;
    if (line.length() < from || !isHex(line)) {
      return new Unreadable(line);
    }
    int bytes = Character.digit(line.charAt(from - 1), 16);
    int identifier = HexFormat.fromHexDigits(line, 1, 1 + identifierDigits);
    if (!hasLength(line, from, bytes) || !isIdentifier(identifier, isLong)) {
      return new Unreadable(line);
    }
    String data = line.substring(from, from + 2 * bytes).toUpperCase(Locale.ROOT);
    return new Frame(isLong, identifier, data);
  }

  /**
   * Whether a line is as long as its length digit says. A time stamp of four digits is tolerated
   * behind eight bytes only, as ISO 15765-4 frames have: elsewhere it could be data behind a
   * damaged length digit.
   */
  private static boolean hasLength(String line, int from, int bytes) {
    int expected = from + 2 * bytes;
    return bytes <= 8
        && (line.length() == expected || (bytes == 8 && line.length() == expected + 4));
  }

  private static SerialCanLine remoteFrame(String line, int identifierDigits) {
    boolean isWhole =
        line.length() == 2 + identifierDigits || line.length() == 6 + identifierDigits;
    return isWhole && isHex(line) ? new RemoteFrame() : new Unreadable(line);
  }

  private static boolean isHex(String line) {
    return line.chars().skip(1).allMatch(HexFormat::isHexDigit);
  }

  private static boolean isIdentifier(int identifier, boolean isLong) {
    return identifier >= 0 && identifier <= (isLong ? 0x1FFF_FFFF : 0x7FF);
  }
}
