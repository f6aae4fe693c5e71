package steadypull.store.column;

/**
 * The low bits of numbers, side by side: the first number's in the lowest bits of the first octet.
 * They are noise as a rule, and noise packed plainly costs no more than it must.
 */
final class LowBits {
  private static final int OCTET = 8;

  private LowBits() {}

  static int octets(int count, int bits) {
    return (int) (((long) count * bits + OCTET - 1) / OCTET);
  }

  static void write(ByteWriter out, long[] numbers, int count, int bits) {
    long pending = 0;
    int filled = 0;
    for (int i = 0; i < count; i++) {
      for (int done = 0; done < bits; done += Integer.SIZE) {
        int step = Math.min(Integer.SIZE, bits - done);
        pending |= ((numbers[i] >>> done) & mask(step)) << filled;
        filled += step;
        while (filled >= OCTET) {
          out.octet((int) pending);
          pending >>>= OCTET;
          filled -= OCTET;
        }
      }
    }
    if (filled > 0) {
      out.octet((int) pending);
    }
  }

  /** Puts the low bits under the numbers, which hold the high ones alone. */
  static void readUnder(ByteReader in, long[] highs, int count, int bits)
      throws DamagedSegmentException {
    int next = in.skip(octets(count, bits));
    byte[] octets = in.array();
    long pending = 0;
    int filled = 0;
    for (int i = 0; i < count; i++) {
      long number = highs[i] << bits;
      for (int done = 0; done < bits; done += Integer.SIZE) {
        int step = Math.min(Integer.SIZE, bits - done);
        for (; filled < step; filled += OCTET) {
          pending |= (octets[next++] & 0xFFL) << filled;
        }
        number |= (pending & mask(step)) << done;
        pending >>>= step;
        filled -= step;
      }
      highs[i] = number;
    }
  }

  private static long mask(int bits) {
    return (1L << bits) - 1;
  }
}
