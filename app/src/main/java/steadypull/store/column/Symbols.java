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

  static void read(ByteReader in, long[] highs, int count) throws DamagedSegmentException {
    if (in.remaining() == count) {
      readPlain(in, highs, count);
      return;
    }
    for (int i = 0; i < count; i++) {
      int octet = in.octet();
      highs[i] = octet < ESCAPE ? octet : ESCAPE + in.unsigned();
    }
    in.requireEnd();
  }

  /** As many octets as numbers: there can be no escape among them. */
  private static void readPlain(ByteReader in, long[] highs, int count)
      throws DamagedSegmentException {
    int from = in.skip(count);
    byte[] octets = in.array();
    for (int i = 0; i < count; i++) {
      int octet = octets[from + i] & 0xFF;
      if (octet == ESCAPE) {
        throw new DamagedSegmentException("a number after its mark", "the end");
      }
      highs[i] = octet;
    }
  }
}
