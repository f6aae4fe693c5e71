package steadypull.thermal;

/**
 * The temperatures of all draws at one moment after another, each time sorted. Neighbouring moments
 * have nearly the same order, so each is begun in the order of the one before: sorting by insertion
 * then takes little more than one look at each. Used by one thread.
 */
final class SortedColumn {
  private final double[][] draws;
  private final int[] order;
  private final double[] sorted;

  /** Columns of those draws, by draw and then by moment; they may change between two calls. */
  SortedColumn(double[][] draws) {
    this.draws = draws;
    order = new int[draws.length];
    sorted = new double[draws.length];
    for (int draw = 0; draw < order.length; draw++) {
      order[draw] = draw;
    }
  }

  /** The temperatures at a point, lowest first; the same array each time. */
  double[] at(int point) {
    for (int place = 0; place < order.length; place++) {
      int draw = order[place];
      double value = draws[draw][point];
      int hole = place;
      while (hole > 0 && sorted[hole - 1] > value) {
        sorted[hole] = sorted[hole - 1];
        order[hole] = order[hole - 1];
        hole--;
      }
      sorted[hole] = value;
      order[hole] = draw;
    }
    return sorted;
  }
}
