package steadypull.store.column;

/**
 * What numbers cost when their low bits lie apart and the rest is coded by how often it occurs.
 *
 * @param lowBits how many lie apart
 * @param bits an estimate of all the bits
 */
record SymbolCost(int lowBits, double bits) {
  /** A code table in deflated data: some bits for each symbol that occurs (estimated). */
  private static final double TABLE_BITS = 5;

  /** A number after its escape (estimated). */
  private static final double ESCAPED_BITS = 14;

  private static final int SYMBOL_BITS = 8;
  private static final double LN_2 = Math.log(2);

  /** The number of low bits that costs least. */
  static SymbolCost least(long[] numbers, int count) {
    int[] lengths = new int[Long.SIZE + 1];
    for (int i = 0; i < count; i++) {
      lengths[Long.SIZE - Long.numberOfLeadingZeros(numbers[i])]++;
    }
    int usual = usualLength(lengths, count);
    SymbolCost best = of(numbers, count, Math.min(Long.SIZE - 1, usual));
    for (int lowBits = usual - 1; lowBits >= Math.max(0, usual - SYMBOL_BITS); lowBits--) {
      SymbolCost cost = of(numbers, count, lowBits);
      best = cost.bits < best.bits ? cost : best;
    }
    return best;
  }

  private static SymbolCost of(long[] numbers, int count, int lowBits) {
    int[] occurrences = new int[Symbols.ESCAPE + 1];
    for (int i = 0; i < count; i++) {
      long high = numbers[i] >>> lowBits;
      occurrences[high >= 0 && high < Symbols.ESCAPE ? (int) high : Symbols.ESCAPE]++;
    }
    double bits = (double) count * lowBits + ESCAPED_BITS * occurrences[Symbols.ESCAPE];
    for (int times : occurrences) {
      if (times > 0) {
        bits += TABLE_BITS + times * Math.log((double) count / times) / LN_2;
      }
    }
    return new SymbolCost(lowBits, bits);
  }

  /** The bit length that all but one in fifty numbers keep to. */
  private static int usualLength(int[] lengths, int count) {
    int length = Long.SIZE;
    for (int longer = lengths[length]; longer <= count / 50 && length > 0; ) {
      length--;
      longer += lengths[length];
    }
    return length;
  }
}
