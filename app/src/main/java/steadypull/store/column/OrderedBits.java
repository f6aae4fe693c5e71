package steadypull.store.column;

/**
 * Doubles as integers of the same order: neighbours differ by one. IEEE 754-2019, 5.10
 * (totalOrder), clause from memory.
 */
final class OrderedBits {
  private OrderedBits() {}

  static long of(double value) {
    return flip(Double.doubleToRawLongBits(value));
  }

  static double value(long ordered) {
    return Double.longBitsToDouble(flip(ordered));
  }

  static boolean same(double one, double other) {
    return Double.doubleToRawLongBits(one) == Double.doubleToRawLongBits(other);
  }

  /** Negative doubles count backwards; flipping twice changes nothing. */
  private static long flip(long bits) {
    return bits ^ ((bits >> 63) & Long.MAX_VALUE);
  }
}
