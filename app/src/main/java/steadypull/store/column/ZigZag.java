package steadypull.store.column;

/** Integers of either sign as unsigned ones, small ones small: 0, -1, 1, -2 become 0, 1, 2, 3. */
final class ZigZag {
  private ZigZag() {}

  static long of(long value) {
    return (value << 1) ^ (value >> 63);
  }

  static long undo(long coded) {
    return (coded >>> 1) ^ -(coded & 1);
  }
}
