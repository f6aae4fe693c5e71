package steadypull.store.column;

/**
 * Numbers as octets: below 255 one octet, otherwise 255 and the rest as {@link
 * ByteWriter#unsigned}.
 */
final class Symbols {
  static final int ESCAPE = 255;

  /** The escape and a number of ten octets. */
  static final int MOST_OCTETS = 11;

  private Symbols() {}

  /** Writes each number without its low bits. */
  static void write(ByteWriter out, long[] numbers, int count, int lowBits) {
    for (int i = 0; i < count; i++) {
      long high = numbers[i] >>> lowBits;
      if (high >= 0 && high < ESCAPE) {
        out.octet((int) high);
      } else {
        out.octet(ESCAPE);
        out.unsigned(high - ESCAPE);
      }
    }
  }

  static void read(ByteReader in, long[] highs) throws DamagedSegmentException {
    int done = in.octetsUntil(ESCAPE, highs, 0);
    while (done < highs.length) {
      // What stopped it is an escape, or the end, which is refused here.
      highs[done] = in.octet() + in.unsigned();
      done = in.octetsUntil(ESCAPE, highs, done + 1);
    }
  }
}
