package steadypull.adapter.frame;

/**
 * Puts ISO 15765-2 segments together, classical CAN, normal addressing, one message under way for
 * each identifier. Byte 0, high half, tells the kind: 0L single, L = 1 to 7 payload bytes, then
 * filler; 1h ll first, 12-bit length from 8 on, then 6 payload bytes; 2n consecutive, n counting 1
 * to F, 0, 1 and so on, then up to 7 payload bytes; 3s flow control, which the adapter sends and
 * which carries no data. A message that is never completed ends with its reply. Used by one thread.
 */
final class SegmentAssembly {
  private static final int MOST_IN_SINGLE = 7;
  private static final int WHOLE_FRAME = 8;
  private static final int FIRST_PAYLOAD = 2;

  /** ISO 15765-4 allows eight control units; headers may be damaged. */
  private static final int MOST_UNDER_WAY = 16;

  private static final int NONE = -1;

  private final MessageBuffer messages;
  private final int[] identifiers = new int[MOST_UNDER_WAY];
  private final int[] starts = new int[MOST_UNDER_WAY];
  private final int[] lengths = new int[MOST_UNDER_WAY];
  private final int[] filled = new int[MOST_UNDER_WAY];
  private final int[] sequences = new int[MOST_UNDER_WAY];
  private int underWay;

  SegmentAssembly(MessageBuffer messages) {
    this.messages = messages;
  }

  /** How many frames carry so many payload bytes. */
  static int frames(int payloadBytes) {
    int afterFirst = payloadBytes - (WHOLE_FRAME - FIRST_PAYLOAD);
    return payloadBytes <= MOST_IN_SINGLE ? 1 : 1 + Math.ceilDiv(afterFirst, MOST_IN_SINGLE);
  }

  /** Forgets what is under way, for the next reply. */
  void clear() {
    underWay = 0;
  }

  /**
   * Takes the next frame; a message that it completes goes to the buffer.
   *
   * @param sender the identifier as text
   * @param size how many bytes the frame has, 1 to 8
   */
  void accept(int identifier, String sender, byte[] frame, int size) {
    int low = frame[0] & 0x0F;
    switch ((frame[0] & 0xFF) >> 4) {
      case 0 -> single(identifier, sender, frame, size, low);
      case 1 -> first(identifier, frame, size, (low << 8) | (frame[1] & 0xFF));
      case 2 -> consecutive(identifier, sender, frame, size, low);
      case 3 -> {}
      default -> forget(identifier);
    }
  }

  private void single(int identifier, String sender, byte[] frame, int size, int length) {
    forget(identifier);
    if (length >= 1 && length <= MOST_IN_SINGLE && length < size) {
      messages.add(sender, frame, 1, 1 + length);
    }
  }

  private void first(int identifier, byte[] frame, int size, int length) {
    forget(identifier);
    if (size == WHOLE_FRAME && length > MOST_IN_SINGLE && underWay < MOST_UNDER_WAY) {
      identifiers[underWay] = identifier;
      starts[underWay] = messages.reserve(length);
      lengths[underWay] = length;
      filled[underWay] = WHOLE_FRAME - FIRST_PAYLOAD;
      sequences[underWay] = 1;
      messages.put(starts[underWay], frame, FIRST_PAYLOAD, WHOLE_FRAME);
      underWay++;
    }
  }

  private void consecutive(int identifier, String sender, byte[] frame, int size, int sequence) {
    int at = find(identifier);
    if (at == NONE) {
      return;
    }
    int missing = Math.min(lengths[at] - filled[at], MOST_IN_SINGLE);
    if (sequence != sequences[at] || size - 1 < missing) {
      forget(identifier);
      return;
    }
    messages.put(starts[at] + filled[at], frame, 1, 1 + missing);
    filled[at] += missing;
    sequences[at] = (sequence + 1) % 16;
    if (filled[at] == lengths[at]) {
      messages.complete(sender, starts[at], lengths[at]);
      forget(identifier);
    }
  }

  private int find(int identifier) {
    for (int i = 0; i < underWay; i++) {
      if (identifiers[i] == identifier) {
        return i;
      }
    }
    return NONE;
  }

  private void forget(int identifier) {
    int at = find(identifier);
    if (at != NONE) {
      underWay--;
      identifiers[at] = identifiers[underWay];
      starts[at] = starts[underWay];
      lengths[at] = lengths[underWay];
      filled[at] = filled[underWay];
      sequences[at] = sequences[underWay];
    }
  }
}
