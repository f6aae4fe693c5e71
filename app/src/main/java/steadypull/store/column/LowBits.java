package steadypull.store.column;

import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;

/**
 * The low bits of numbers, side by side: the first number's in the lowest bits of the first octet.
 * They are noise as a rule, and noise packed plainly costs no more than it must.
 */
final class LowBits {
  private static final int OCTET = 8;

  /** What a word holds whichever bit of its first octet it begins at. */
  private static final int MOST_AT_ONCE = 57;

  private static final VarHandle WORDS =
      MethodHandles.byteArrayViewVarHandle(long[].class, ByteOrder.LITTLE_ENDIAN);

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
  static void readUnder(ByteReader in, long[] highs, int bits) throws DamagedSegmentException {
    int from = in.skip(octets(highs.length, bits));
    if (bits > 0) {
      int quick = bits > MOST_AT_ONCE ? 0 : quick(in.array().length - from, highs.length, bits);
      long mask = mask(bits);
      for (int i = 0; i < quick; i++) {
        long bit = (long) i * bits;
        long word = (long) WORDS.get(in.array(), from + (int) (bit / OCTET));
        highs[i] = highs[i] << bits | (word >>> (bit % OCTET) & mask);
      }
      for (int i = quick; i < highs.length; i++) {
        highs[i] = highs[i] << bits | slowly(in.array(), from, (long) i * bits, bits);
      }
    }
  }

  /** How many numbers can be read from whole words without reaching beyond the array. */
  private static int quick(int octets, int count, int bits) {
    long words = Math.max(0, octets - Long.BYTES) * (long) OCTET / bits;
    return (int) Math.min(count, words);
  }

  private static long slowly(byte[] octets, int from, long firstBit, int bits) {
    long number = 0;
    for (int done = 0; done < bits; done++) {
      long bit = firstBit + done;
      number |= (octets[from + (int) (bit / OCTET)] >>> (bit % OCTET) & 1L) << done;
    }
    return number;
  }

  private static long mask(int bits) {
    return (1L << bits) - 1;
  }
}
