package steadypull.store.column;

/**
 * A series as what is new in it: itself, its first or its second differences. Integers wrap around,
 * so every series comes back.
 */
final class Differences {
  static final int HIGHEST_ORDER = 2;

  private Differences() {}

  /** Turns a series into its differences of that order, in place; what is before it counts as 0. */
  static void take(long[] series, int length, int order) {
    for (int round = 0; round < order; round++) {
      long before = 0;
      for (int i = 0; i < length; i++) {
        long now = series[i];
        series[i] = now - before;
        before = now;
      }
    }
  }

  static void undo(long[] series, int length, int order) {
    for (int round = 0; round < order; round++) {
      long sum = 0;
      for (int i = 0; i < length; i++) {
        sum += series[i];
        series[i] = sum;
      }
    }
  }
}
