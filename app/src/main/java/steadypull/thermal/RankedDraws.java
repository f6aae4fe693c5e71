package steadypull.thermal;

/**
 * Puts the temperatures of all draws in order, every moment by itself and all moments at once: by
 * an odd-even merge network (Batcher, Sorting networks and their applications, AFIPS 32, 1968;
 * Knuth, The Art of Computer Programming 3, section 5.2.2, algorithm M). What it compares does not
 * depend on the values, so whole rows are compared, several moments in one instruction.
 */
final class RankedDraws {
  private RankedDraws() {}

  /**
   * Copies of the temperatures given.
   *
   * @param draws degC by draw, then by moment
   * @return degC by rank, the coolest first, then by moment; a row belongs to no one draw
   */
  static double[][] of(double[][] draws) {
    double[][] ranks = new double[draws.length][];
    for (int draw = 0; draw < draws.length; draw++) {
      ranks[draw] = draws[draw].clone();
    }
    for (int merged = 1; merged < ranks.length; merged *= 2) {
      for (int apart = merged; apart >= 1; apart /= 2) {
        merge(ranks, merged, apart);
      }
    }
    return ranks;
  }

  /** Compares rows that lie so far apart and belong to the same two runs that are being merged. */
  private static void merge(double[][] ranks, int merged, int apart) {
    for (int first = apart % merged; first + apart < ranks.length; first += 2 * apart) {
      int last = Math.min(first + apart, ranks.length - apart);
      for (int row = first; row < last; row++) {
        if (row / (2 * merged) == (row + apart) / (2 * merged)) {
          order(ranks[row], ranks[row + apart]);
        }
      }
    }
  }

  private static void order(double[] cooler, double[] hotter) {
    for (int point = 0; point < cooler.length; point++) {
      double one = cooler[point];
      double other = hotter[point];
      cooler[point] = Math.min(one, other);
      hotter[point] = Math.max(one, other);
    }
  }
}
