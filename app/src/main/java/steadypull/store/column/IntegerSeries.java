package steadypull.store.column;

import java.util.Arrays;

/**
 * A series of integers in few octets; how many there are stands elsewhere.
 *
 * <pre>
 * method   1 octet   0, 1, 2: order of the differences; 3: all are the same
 * base     signed    the least (order 0) or the first of them
 * step     unsigned  not for method 3: every difference to the base is a multiple of it
 * bits     1 octet   not for method 3: 0 to 63 low bits apart
 * symbols  block     of what is left above the low bits, see {@link Symbols} and {@link Deflation}
 * low bits           see {@link LowBits}
 * </pre>
 *
 * What is packed at orders 1 and 2 is zigzag, see {@link ZigZag}.
 */
final class IntegerSeries {
  private static final int SAME = 3;

  private IntegerSeries() {}

  static void write(ByteWriter out, long[] series, int count, Deflation deflation) {
    if (isSame(series, count)) {
      out.octet(SAME);
      out.signed(series[0]);
      return;
    }
    long step = CommonStep.of(series, count);
    ByteWriter best = new ByteWriter();
    write(best, series, count, step, Packing.choose(series, count, step), deflation);
    for (Packing other : Packing.repetitive()) {
      ByteWriter attempt = new ByteWriter();
      write(attempt, series, count, step, other, deflation);
      best = attempt.size() < best.size() ? attempt : best;
    }
    out.append(best);
  }

  private static void write(
      ByteWriter out, long[] series, int count, long step, Packing packing, Deflation deflation) {
    long base = packing.base(series, count);
    long[] packed = packing.pack(series, count, base, step);
    ByteWriter symbols = new ByteWriter();
    Symbols.write(symbols, packed, count, packing.lowBits());
    out.octet(packing.order());
    out.signed(base);
    out.unsigned(step);
    out.octet(packing.lowBits());
    deflation.write(out, symbols.array(), symbols.size());
    LowBits.write(out, packed, count, packing.lowBits());
  }

  static long[] read(ByteReader in, int count, Inflation inflation) throws DamagedSegmentException {
    return read(in, new long[count], inflation);
  }

  /** Fills an array with a series of its length. */
  static long[] read(ByteReader in, long[] series, Inflation inflation)
      throws DamagedSegmentException {
    int count = series.length;
    int method = in.octet();
    long base = in.signed();
    if (method == SAME) {
      Arrays.fill(series, base);
      return series;
    }
    long step = in.unsigned();
    Packing packing = Packing.read(method, in.octet());
    byte[] symbols = inflation.read(in, Math.multiplyExact(count, Symbols.MOST_OCTETS));
    Symbols.read(new ByteReader(symbols, 0, symbols.length), series, count);
    LowBits.readUnder(in, series, count, packing.lowBits());
    packing.unpack(series, count, base, step);
    return series;
  }

  private static boolean isSame(long[] series, int count) {
    for (int i = 1; i < count; i++) {
      if (series[i] != series[0]) {
        return false;
      }
    }
    return true;
  }
}
