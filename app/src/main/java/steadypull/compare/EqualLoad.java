package steadypull.compare;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * For how long the load of each run was equal to what the runs before mostly pulled, second by
 * second; so climbs whose grade varies are held against each other too. Immutable.
 */
record EqualLoad(List<FoundRun> runs) {
  /** A gear change a second earlier is no other load. */
  private static final int MEAN_SECONDS = 20;

  /** A climb begins with gears and kerbs; the mean over the first minute answers for them. */
  private static final int ONSET_SECONDS = 20;

  /** The runs in their order, each with its window; those without one are rejected. */
  List<FoundRun> windowed(List<RejectedRun> rejected, RunWords words) {
    List<FoundRun> windowed = new ArrayList<>();
    for (FoundRun found : runs) {
      int seconds = seconds(found);
      if (seconds >= LoadSearch.SHORTEST_SECONDS) {
        windowed.add(found.withHeldSeconds(seconds));
      } else {
        rejected.add(
            RunFinding.rejected(
                found.run(), words.say("load.unequal", seconds, LoadSearch.SHORTEST_SECONDS)));
      }
    }
    return windowed;
  }

  private int seconds(FoundRun found) {
    int load = found.run().loadSeconds();
    for (int second = ONSET_SECONDS; second + MEAN_SECONDS <= load; second++) {
      OptionalDouble own = found.mean(second, second + MEAN_SECONDS);
      double usual = usual(second);
      if (own.isEmpty() || !LoadLevel.isAlike(own.getAsDouble(), usual)) {
        return second == ONSET_SECONDS ? 0 : second + MEAN_SECONDS / 2;
      }
    }
    return load;
  }

  /** What the runs before mostly pulled about that second, the others if none lasted so long. */
  private double usual(int second) {
    double[] before = of(Side.BEFORE, second);
    return Figures.median(before.length > 0 ? before : of(Side.AFTER, second)).orElse(0);
  }

  private double[] of(Side side, int second) {
    return runs.stream()
        .filter(found -> found.run().side() == side)
        .filter(found -> found.run().loadSeconds() >= second + MEAN_SECONDS)
        .flatMapToDouble(found -> found.mean(second, second + MEAN_SECONDS).stream())
        .toArray();
  }
}
