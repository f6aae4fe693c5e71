package steadypull.adapter.frame;

/** One ISO 15765-2 frame, classical CAN, normal addressing. Byte 0, high half: the kind. */
sealed interface Segment {
  int MOST_IN_SINGLE = 7;

  /** 0L: L = 1 to 7 payload bytes, then filler. */
  record Single(Payload payload) implements Segment {}

  /** 1h ll: 12-bit length, 8 to 4095, then the first 6 payload bytes. */
  record First(int length, Payload payload) implements Segment {}

  /** 2n: sequence number n counting 1 to F, 0, 1 and so on, then up to 7 payload bytes. */
  record Consecutive(int sequence, Payload payload) implements Segment {}

  /** 3s: flow control. The adapter sends these; one that is printed carries no data. */
  record FlowControl() implements Segment {}

  /** Anything else, or a frame too short for its length. */
  record Malformed() implements Segment {}

  static Segment parse(Payload bytes) {
    int low = bytes.at(0) & 0x0F;
    return switch (bytes.at(0) >> 4) {
      case 0 -> single(bytes, low);
      case 1 -> first(bytes, low);
      case 2 -> bytes.size() > 1 ? new Consecutive(low, bytes.from(1)) : new Malformed();
      case 3 -> new FlowControl();
      default -> new Malformed();
    };
  }

  private static Segment single(Payload bytes, int length) {
    boolean fits = length >= 1 && length <= MOST_IN_SINGLE && length < bytes.size();
    return fits ? new Single(bytes.slice(1, 1 + length)) : new Malformed();
  }

  private static Segment first(Payload bytes, int lengthHigh) {
    if (bytes.size() != 8) {
      return new Malformed();
    }
    int length = (lengthHigh << 8) | bytes.at(1);
    return length > MOST_IN_SINGLE ? new First(length, bytes.from(2)) : new Malformed();
  }
}
