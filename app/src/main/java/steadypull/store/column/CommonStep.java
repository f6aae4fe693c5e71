package steadypull.store.column;

/**
 * The greatest common divisor of the differences in a series: imported tables have times on a grid,
 * and many signals count in steps.
 */
final class CommonStep {
  private CommonStep() {}

  /** At least 1; 1 also where the series spans more than integers can. */
  static long of(long[] series, int count) {
    long least = series[0];
    long greatest = series[0];
    for (int i = 1; i < count; i++) {
      least = Math.min(least, series[i]);
      greatest = Math.max(greatest, series[i]);
    }
    if (greatest - least < 0) {
      return 1;
    }
    long step = 0;
    for (int i = 1; i < count && step != 1; i++) {
      step = divisor(Math.abs(series[i] - series[0]), step);
    }
    return Math.max(1, step);
  }

  private static long divisor(long one, long other) {
    long greater = one;
    long smaller = other;
    while (smaller != 0) {
      long rest = greater % smaller;
      greater = smaller;
      smaller = rest;
    }
    return greater;
  }
}
