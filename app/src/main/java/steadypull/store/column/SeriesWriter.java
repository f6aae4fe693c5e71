package steadypull.store.column;

/**
 * Writes series of integers in few octets; how many there are in each stands elsewhere.
 *
 * <pre>
 * method   1 octet    0, 1, 2: order of the differences; 3: each is a slope more than the one before
 * base     signed     the least (order 0) or the first
 * slope    signed     method 3 only; nothing follows it
 * step     unsigned   every difference to the base is a multiple of it
 * bits     1 octet    0 to 63 low bits apart
 * symbols  block      what is left above the low bits, see {@link Symbols}; of less than 256
 *                     integers not here: they lie in the pool, one series after the other
 * low bits            see {@link LowBits}
 * </pre>
 *
 * What is packed at orders 1 and 2 is zigzag, see {@link ZigZag}. A block is its length, its length
 * as it lies there, and its octets, deflated (RFC 1951) unless both lengths are the same. The pool
 * is a block of its own, before all that refers to it: short series would each need a code table.
 */
final class SeriesWriter implements AutoCloseable {
  static final int SLOPE = 3;

  /** Series of fewer integers share the pool. */
  static final int POOLED = 256;

  private final ByteWriter body = new ByteWriter();
  private final ByteWriter pool = new ByteWriter();
  private final ByteWriter symbols = new ByteWriter();
  private final Deflation deflation;

  SeriesWriter() {
    this(new Deflation());
  }

  private SeriesWriter(Deflation deflation) {
    this.deflation = deflation;
  }

  /** Writes elsewhere with the same deflation, to see how long it becomes; not to be closed. */
  SeriesWriter attempt() {
    return new SeriesWriter(deflation);
  }

  /** Where single numbers go, between the series. */
  ByteWriter body() {
    return body;
  }

  /** How long it is; the pool counts as it is before deflating. */
  int size() {
    return body.size() + pool.size();
  }

  /** Writes integers whose differences may be small. */
  void series(long[] series, int count) {
    if (sloped(series, count)) {
      return;
    }
    long step = CommonStep.of(series, count);
    Packing chosen = Packing.choose(series, count, step);
    if (count < POOLED || chosen.lowBits() == 0 || chosen.lowBits() > Byte.SIZE) {
      packed(series, count, step, chosen);
      return;
    }
    // Deflating also finds what repeats itself, which no estimate of ours tells.
    SeriesWriter apart = attempt();
    apart.packed(series, count, step, chosen);
    SeriesWriter whole = attempt();
    whole.packed(series, count, step, new Packing(chosen.order(), 0));
    body.append((whole.size() < apart.size() ? whole : apart).body);
  }

  /** Writes small integers that repeat themselves in long runs, which deflating finds. */
  void repeating(long[] series, int count) {
    if (!sloped(series, count)) {
      packed(series, count, 1, new Packing(0, 0));
    }
  }

  void block(ByteWriter octets) {
    deflation.write(body, octets.array(), octets.size());
  }

  /** Appends the pool and what has been written, and is as new. */
  void finish(ByteWriter out) {
    deflation.write(out, pool.array(), pool.size());
    out.append(body);
    pool.clear();
    body.clear();
  }

  private boolean sloped(long[] series, int count) {
    long base = count == 0 ? 0 : series[0];
    long slope = count < 2 ? 0 : series[1] - base;
    for (int i = 1; i < count; i++) {
      if (series[i] - series[i - 1] != slope) {
        return false;
      }
    }
    body.octet(SLOPE);
    body.signed(base);
    body.signed(slope);
    return true;
  }

  private void packed(long[] series, int count, long step, Packing packing) {
    long base = packing.base(series, count);
    long[] packed = packing.pack(series, count, base, step);
    body.octet(packing.order());
    body.signed(base);
    body.unsigned(step);
    body.octet(packing.lowBits());
    if (count < POOLED) {
      Symbols.write(pool, packed, count, packing.lowBits());
    } else {
      symbols.clear();
      Symbols.write(symbols, packed, count, packing.lowBits());
      block(symbols);
    }
    LowBits.write(body, packed, count, packing.lowBits());
  }

  @Override
  public void close() {
    deflation.close();
  }
}
