package steadypull.road.memory;

import java.util.List;

/**
 * Whether a pass and what was known before tell of one road. Grades of one node may differ by
 * chance; over hundreds of metres a difference of several standard deviations means that one of
 * both is wrong: a trailer's mass, a receiver in a gorge. Pure functions.
 */
enum Agreement {
  /** The pass is one more. */
  AGREES,
  /** Too short to say whether it is wrong; nothing is learnt from it. */
  DOUBTFUL,
  /** The pass stands against those before. */
  CONTRADICTS;

  private static final double WINDOW_METRES = 150;
  private static final double SHORTEST_METRES = 300;

  /** Mean difference in standard deviations that is no chance any more (estimated). */
  private static final double FARTHEST = 2.5;

  /**
   * A difference at a node.
   *
   * @param metres along the pass
   * @param deviations told less known grade, over the standard deviation of that difference
   */
  record Difference(double metres, double deviations) {}

  /** One for each difference; they are in the order of the pass. */
  static Agreement[] of(List<Difference> differences) {
    Agreement[] found = new Agreement[differences.size()];
    int next = 0;
    while (next < found.length) {
      int from = next;
      boolean isFar = isFar(differences, from);
      while (next < found.length && isFar(differences, next) == isFar) {
        next++;
      }
      double metres = differences.get(next - 1).metres - differences.get(from).metres;
      Agreement run = !isFar ? AGREES : metres < SHORTEST_METRES ? DOUBTFUL : CONTRADICTS;
      for (int i = from; i < next; i++) {
        found[i] = run;
      }
    }
    return found;
  }

  private static boolean isFar(List<Difference> differences, int at) {
    double metres = differences.get(at).metres;
    int from = at;
    while (from > 0 && metres - differences.get(from - 1).metres <= WINDOW_METRES) {
      from--;
    }
    int to = at;
    while (to + 1 < differences.size()
        && differences.get(to + 1).metres - metres <= WINDOW_METRES) {
      to++;
    }
    double mean =
        differences.subList(from, to + 1).stream()
            .mapToDouble(Difference::deviations)
            .average()
            .orElse(0);
    return Math.abs(mean) > FARTHEST;
  }
}
