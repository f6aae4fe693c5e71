package steadypull.store.column;

/**
 * How a series of integers is packed.
 *
 * @param order of the differences, 0 to 2
 * @param lowBits 0 to 63
 */
record Packing(int order, int lowBits) {
  private static final int MOST_LOW_BITS = 63;

  static Packing read(int order, int lowBits) throws DamagedSegmentException {
    if (order > Differences.HIGHEST_ORDER || lowBits > MOST_LOW_BITS) {
      throw new DamagedSegmentException(
          "differences of order 0 to 2 and up to 63 low bits", order + " and " + lowBits);
    }
    return new Packing(order, lowBits);
  }

  /** What an estimate, by the entropy of the symbols, takes for the shortest. */
  static Packing choose(long[] series, int count, long step) {
    Packing best = new Packing(0, 0);
    double least = Double.POSITIVE_INFINITY;
    for (int order = 0; order <= Differences.HIGHEST_ORDER; order++) {
      Packing plain = new Packing(order, 0);
      long[] packed = plain.pack(series, count, plain.base(series, count), step);
      SymbolCost cost = SymbolCost.least(packed, count);
      if (cost.bits() < least) {
        least = cost.bits();
        best = new Packing(order, cost.lowBits());
      }
    }
    return best;
  }

  long base(long[] series, int count) {
    long base = series[0];
    for (int i = 1; i < count && order == 0; i++) {
      base = Math.min(base, series[i]);
    }
    return base;
  }

  long[] pack(long[] series, int count, long base, long step) {
    long[] packed = new long[count];
    for (int i = 0; i < count; i++) {
      long above = series[i] - base;
      packed[i] = step == 1 ? above : above / step;
    }
    Differences.take(packed, count, order);
    for (int i = 0; i < count && order > 0; i++) {
      packed[i] = ZigZag.of(packed[i]);
    }
    return packed;
  }

  void unpack(long[] packed, long base, long step) {
    int count = packed.length;
    for (int i = 0; i < count && order > 0; i++) {
      packed[i] = ZigZag.undo(packed[i]);
    }
    Differences.undo(packed, count, order);
    for (int i = 0; i < count; i++) {
      packed[i] = packed[i] * step + base;
    }
  }
}
