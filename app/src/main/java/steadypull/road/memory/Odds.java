package steadypull.road.memory;

import java.util.List;

/**
 * How likely a way is to be taken where ways part, from how often each was: half a time is added to
 * each and to the way nobody took yet (Krichevsky and Trofimov, "The performance of universal
 * encoding", IEEE Transactions on Information Theory 27, 1981, 199-207). Pure functions.
 */
final class Odds {
  private static final double PRIOR = 0.5;

  private Odds() {}

  /** The odds of each link, in their order; 1 for a single one: there is nothing to choose. */
  static double[] of(List<RoadLink> links) {
    if (links.size() == 1) {
      return new double[] {1};
    }
    double all = PRIOR * (links.size() + 1);
    for (RoadLink link : links) {
      all += link.count();
    }
    double whole = all;
    return links.stream().mapToDouble(link -> (link.count() + PRIOR) / whole).toArray();
  }
}
