package steadypull.road.climb;

import java.util.ArrayList;
import java.util.List;

/**
 * Where a profile rises by more than level road would forgive. What counts is height less 1 m for
 * each 100 m driven, the <i>gain</i>: it falls on level road too, so that a long level stretch ends
 * a rise as a dip does. One thread.
 *
 * <p>Rises run from a lowest to a highest point of the gain, dips below a threshold overlooked (the
 * extremes that are left are those of higher persistence; Edelsbrunner, Letscher and Zomorodian,
 * "Topological persistence and simplification", Discrete and Computational Geometry 28, 2002,
 * 511-533). The same rises are found in a profile that is read backwards with its sign changed.
 */
final class RiseSearch {
  /** Roads that are called level reach 1 % (common practice, no source). */
  private static final double LEVEL_GRADE = 0.01;

  /** A dip: 6 m of gain are 600 m of level road, or 3 m lost within 300 m (our choice). */
  private static final double DIP_METRES = 6;

  /** On long climbs, 5 % of what rises on the lesser side of the dip (our choice). */
  private static final double DIP_SHARE = 0.05;

  private final RoadProfile profile;
  private final double[] gain;

  private RiseSearch(RoadProfile profile) {
    this.profile = profile;
    gain = new double[profile.size()];
    for (int step = 1; step < gain.length; step++) {
      double grade = (profile.grade(step - 1) + profile.grade(step)) / 2;
      gain[step] = gain[step - 1] + (grade - LEVEL_GRADE) * RoadProfile.STEP_METRES;
    }
  }

  /** The rises of a profile, in order; each gains 6 m or more. */
  static List<Rise> rises(RoadProfile profile) {
    RiseSearch search = new RiseSearch(profile);
    List<Rise> rises = search.parted();
    while (search.mergeOne(rises)) {
      // until no dip is small enough
    }
    return List.copyOf(rises);
  }

  private List<Rise> parted() {
    List<Rise> rises = new ArrayList<>();
    int lowest = 0;
    int highest = 0;
    boolean isRising = false;
    for (int step = 1; step < gain.length; step++) {
      if (isRising && gain[step] > gain[highest]) {
        highest = step;
      } else if (isRising && gain[step] <= gain[highest] - DIP_METRES) {
        rises.add(new Rise(lowest, highest));
        isRising = false;
        lowest = step;
      } else if (!isRising && gain[step] <= gain[lowest]) {
        lowest = step;
      } else if (!isRising && gain[step] >= gain[lowest] + DIP_METRES) {
        isRising = true;
        highest = step;
      }
    }
    if (isRising) {
      rises.add(new Rise(lowest, highest));
    }
    return rises;
  }

  /** Merges the two rises whose dip is the smallest for them, if it is small enough. */
  private boolean mergeOne(List<Rise> rises) {
    int smallest = -1;
    double smallestShare = DIP_SHARE;
    for (int i = 0; i + 1 < rises.size(); i++) {
      double dip = gain[rises.get(i).to()] - gain[rises.get(i + 1).from()];
      double share = dip / Math.min(height(rises.get(i)), height(rises.get(i + 1)));
      if (share <= smallestShare) {
        smallest = i;
        smallestShare = share;
      }
    }
    if (smallest >= 0) {
      Rise second = rises.remove(smallest + 1);
      rises.set(smallest, new Rise(rises.get(smallest).from(), second.to()));
    }
    return smallest >= 0;
  }

  private double height(Rise rise) {
    return Math.max(1e-6, profile.height(rise.to()) - profile.height(rise.from()));
  }
}
