package steadypull.thermal;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.distribution.continuous.NormalDistribution;
import steadypull.road.RoadAhead;

/**
 * The ways that the road ahead may go, with their odds. What the odds leave leads where nobody has
 * been. Immutable.
 */
final class RoadChoice {
  private static final NormalDistribution NORMAL = new NormalDistribution();

  private final Slope beyondCertain;
  private final List<Slope> ways = new ArrayList<>();
  private final List<Double> odds = new ArrayList<>();

  RoadChoice(RoadAhead.Known road) {
    beyondCertain = Slope.of(road.certain());
    for (RoadAhead.Branch branch : road.branches()) {
      ways.add(Slope.of(road, branch));
      odds.add(branch.odds());
    }
  }

  /** The way that a draw takes, by its standard normal number. */
  Slope way(double normal) {
    if (ways.isEmpty()) {
      return beyondCertain;
    }
    double left = NORMAL.cumulativeProbability(normal);
    for (int way = 0; way < ways.size(); way++) {
      left -= odds.get(way);
      if (left < 0) {
        return ways.get(way);
      }
    }
    return beyondCertain;
  }
}
