package steadypull.adapter.frame;

import java.time.Duration;
import java.util.List;
import java.util.Optional;

/** How the lines of a reply carry messages while headers are shown. Stateless. */
public enum MessageFormat {
  /** ISO 15765-4, 11-bit identifiers: 3 hex digits, then up to 8 bytes. */
  CAN_11_BIT(true),
  /** ISO 15765-4, 29-bit identifiers: 8 hex digits, then up to 8 bytes. */
  CAN_29_BIT(true),
  /** SAE J1850: 3 header bytes, up to 7 data bytes, checksum by cyclic redundancy. */
  J1850(false),
  /** ISO 9141-2: 3 header bytes, up to 7 data bytes, checksum by sum. */
  ISO_9141(false),
  /** ISO 14230: format byte with the length, target, source, data, checksum by sum. */
  ISO_14230(false);

  private final boolean isCan;

  MessageFormat(boolean isCan) {
    this.isCan = isCan;
  }

  /** Whether one request may ask for several parameters. */
  public boolean isCan() {
    return isCan;
  }

  /** Whether a session is opened first, and lost after 5 s without a request (P3max). */
  public boolean hasSessions() {
    return switch (this) {
      case ISO_9141, ISO_14230 -> true;
      case CAN_11_BIT, CAN_29_BIT, J1850 -> false;
    };
  }

  /** Least span between an answer and the next request (P3min of ISO 9141-2, ISO 14230-2). */
  public Duration gapAfterAnswers() {
    return hasSessions() ? Duration.ofMillis(55) : Duration.ZERO;
  }

  /**
   * Whether a control unit can be addressed so over this protocol. An adapter would cut a header of
   * the other kind to size and send to nobody knows whom.
   *
   * @param header request header in hex digits, such as {@code 7E1} or {@code 18DA18F1}
   */
  public boolean canAddress(String header) {
    return switch (this) {
      case CAN_11_BIT -> header.length() == 3;
      case CAN_29_BIT -> header.length() == 8;
      case J1850, ISO_9141, ISO_14230 -> false;
    };
  }

  /**
   * The request header of a control unit by the address in its answers: ISO 15765-4 pairs 7E0 with
   * 7E8 up to 7E7 with 7EF, and 18DAxxF1 with 18DAF1xx.
   *
   * @param controlUnit the sender as {@link Message#controlUnit} writes it
   * @return empty if the address has no such pair, or on the older buses
   */
  public Optional<String> requestHeader(String controlUnit) {
    return switch (this) {
      case CAN_11_BIT ->
          controlUnit.matches("7E[89A-F]")
              ? Optional.of("7E" + (Character.digit(controlUnit.charAt(2), 16) - 8))
              : Optional.empty();
      case CAN_29_BIT ->
          controlUnit.matches("18DAF1[0-9A-F]{2}")
              ? Optional.of("18DA" + controlUnit.substring(6) + "F1")
              : Optional.empty();
      case J1850, ISO_9141, ISO_14230 -> Optional.empty();
    };
  }

  /**
   * Reads an adapter's protocol number.
   *
   * @param number one hex digit, without the letter that marks automatic choice
   * @return the format, or empty for numbers that are no diagnostic protocol of a road vehicle
   */
  public static Optional<MessageFormat> ofProtocol(String number) {
    return switch (number) {
      case "1", "2" -> Optional.of(J1850);
      case "3" -> Optional.of(ISO_9141);
      case "4", "5" -> Optional.of(ISO_14230);
      case "6", "8" -> Optional.of(CAN_11_BIT);
      case "7", "9" -> Optional.of(CAN_29_BIT);
      default -> Optional.empty();
    };
  }

  /**
   * The address of the engine's control unit as answers show it: the one that is taken to answer
   * where answers do not show it (ISO 15765-4 on CAN; 10 is usual on the older buses, from memory).
   */
  public String engineUnit() {
    return switch (this) {
      case CAN_11_BIT -> "7E8";
      case CAN_29_BIT -> "18DAF110";
      case J1850, ISO_9141, ISO_14230 -> "10";
    };
  }

  /** Whether a line answers service 01 parameter 00 without a header before it. */
  public static boolean isBareSupportMap(String line) {
    return line.startsWith("4100") && line.length() == 12;
  }

  /** Guesses from one line of a reply, for adapters that do not tell their protocol. */
  public static MessageFormat ofLine(String line) {
    if (line.length() % 2 == 1 || isBareSupportMap(line)) {
      return CAN_11_BIT;
    }
    if (line.startsWith("18DAF1")) {
      return CAN_29_BIT;
    }
    return line.startsWith("8") ? ISO_14230 : ISO_9141;
  }

  /**
   * Puts the messages of one reply together. A line or message that is damaged, out of order or cut
   * short is left out.
   *
   * @param lines hex lines of one reply, blanks removed
   * @return whole messages in the order in which they were completed
   */
  public List<Message> messages(List<String> lines) {
    MessageBuffer whole = new MessageBuffer();
    FrameReader reader = new FrameReader(whole);
    reader.begin(this);
    lines.forEach(reader::readLine);
    return whole.messages();
  }

  /** How many lines carry a message of so many payload bytes, one or more (ISO 15765-2 on CAN). */
  public int lines(int payloadBytes) {
    return isCan ? SegmentAssembly.frames(payloadBytes) : 1;
  }
}
