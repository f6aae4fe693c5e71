package steadypull.adapter.frame;

import java.util.Arrays;

/**
 * Reads the hex lines of a reply, as an adapter prints them with headers on, and puts their
 * messages into a buffer. A line or message that is damaged, out of order or cut short is left out.
 * Works on bytes as they were received and allocates nothing once it has seen every control unit.
 * Used by one thread.
 */
public final class FrameReader {
  private static final int MOST_CAN_BYTES = 8;
  private static final int SHORT_IDENTIFIER = 3;
  private static final int LONG_IDENTIFIER = 8;

  /** ISO 14230: up to 255 data bytes, header and check byte; the length byte in the first byte. */
  private static final int MOST_DIGITS = 600;

  private static final byte NO_DIGIT = -1;
  private static final byte[] DIGITS = digits();

  private final MessageBuffer messages;
  private final SegmentAssembly assembly;
  private final OlderBusFrames olderBus;
  private final SenderNames names = new SenderNames();
  private final byte[] line = new byte[MOST_DIGITS];
  private final byte[] bytes = new byte[MOST_DIGITS / 2];
  private MessageFormat format = MessageFormat.CAN_11_BIT;
  private int digitCount;
  private boolean echoMayCome;
  private int lines;

  /** Makes a reader that fills a buffer. */
  public FrameReader(MessageBuffer messages) {
    this.messages = messages;
    this.assembly = new SegmentAssembly(messages);
    this.olderBus = new OlderBusFrames(messages, names);
  }

  private static byte[] digits() {
    byte[] values = new byte[128];
    Arrays.fill(values, NO_DIGIT);
    for (int value = 0; value < 16; value++) {
      char digit = Character.forDigit(value, 16);
      values[digit] = (byte) value;
      values[Character.toUpperCase(digit)] = (byte) value;
    }
    return values;
  }

  /** Begins a reply and clears the buffer. */
  public void begin(MessageFormat format) {
    this.format = format;
    messages.clear();
    assembly.clear();
    digitCount = 0;
    lines = 0;
  }

  /**
   * Reads a whole reply that is nothing but hex lines; blanks do not matter. The first line that
   * repeats the request is an echo and passed over.
   *
   * @param text what came before the prompt, so many bytes of it
   * @param request the line that was sent, hex digits and a carriage return
   * @return whether it was at least one such line and nothing else; if not, the buffer is empty
   */
  public boolean readPlain(byte[] text, int length, byte[] request) {
    echoMayCome = true;
    for (int i = 0; i < length; i++) {
      byte character = text[i];
      if (character == '\r' || character == '\n') {
        endLine(request);
      } else if (character != ' ' && !isDigitTaken(character)) {
        begin(format);
        return false;
      }
    }
    endLine(request);
    return lines > 0;
  }

  /** Reads one line of hex digits without blanks; anything else is left out. */
  public void readLine(String text) {
    for (int i = 0; i < text.length(); i++) {
      if (text.charAt(i) > 'f' || !isDigitTaken((byte) text.charAt(i))) {
        digitCount = 0;
        return;
      }
    }
    frame();
    digitCount = 0;
  }

  /** Keeps a digit; what is too long for any frame is counted but not kept. */
  private boolean isDigitTaken(byte character) {
    byte value = character < 0 ? NO_DIGIT : DIGITS[character];
    if (value == NO_DIGIT) {
      return false;
    }
    if (digitCount < MOST_DIGITS) {
      line[digitCount] = value;
    }
    digitCount++;
    return true;
  }

  private void endLine(byte[] request) {
    if (digitCount == 0) {
      return;
    }
    if (echoMayCome && isEcho(request)) {
      echoMayCome = false;
    } else {
      lines++;
      frame();
    }
    digitCount = 0;
  }

  private boolean isEcho(byte[] request) {
    if (digitCount != request.length - 1) {
      return false;
    }
    for (int i = 0; i < digitCount; i++) {
      if (request[i] < 0 || DIGITS[request[i]] != line[i]) {
        return false;
      }
    }
    return true;
  }

  private void frame() {
    if (digitCount <= MOST_DIGITS) {
      switch (format) {
        case CAN_11_BIT -> canFrame(SHORT_IDENTIFIER);
        case CAN_29_BIT -> canFrame(LONG_IDENTIFIER);
        case J1850, ISO_9141, ISO_14230 -> {
          if (digitCount % 2 == 0) {
            olderBus.accept(format, bytes, pack(0));
          }
        }
      }
    }
  }

  private void canFrame(int identifierDigits) {
    int dataDigits = digitCount - identifierDigits;
    if (dataDigits >= 2 && dataDigits <= 2 * MOST_CAN_BYTES && dataDigits % 2 == 0) {
      int identifier = 0;
      for (int i = 0; i < identifierDigits; i++) {
        identifier = (identifier << 4) | line[i];
      }
      assembly.accept(
          identifier, names.of(identifier, identifierDigits), bytes, pack(identifierDigits));
    }
  }

  /** Packs the digits from one on into bytes; gives their number. */
  private int pack(int from) {
    int count = (digitCount - from) / 2;
    for (int i = 0; i < count; i++) {
      bytes[i] = (byte) ((line[from + 2 * i] << 4) | line[from + 2 * i + 1]);
    }
    return count;
  }
}
