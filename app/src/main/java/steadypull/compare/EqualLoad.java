package steadypull.compare;

import java.util.List;
import java.util.OptionalDouble;

/**
 * For how long the load of each run was equal to what the runs before mostly pulled, second by
 * second; so climbs whose grade varies are held against each other too. Immutable.
 */
record EqualLoad(List<FoundRun> runs) {
  /** Loads within that are equal, with the mismatch told (our choice). */
  private static final double WITHIN_SHARE = 0.1;

  /** A gear change a second earlier is no other load. */
  private static final int MEAN_SECONDS = 20;

  /** The runs in their order, each with its window. */
  List<Run> windowed() {
    return runs.stream().map(found -> found.run().withHeldSeconds(seconds(found))).toList();
  }

  private int seconds(FoundRun found) {
    int load = found.run().loadSeconds();
    for (int second = 0; second + MEAN_SECONDS <= load; second++) {
      OptionalDouble own = found.mean(second, second + MEAN_SECONDS);
      double usual = usual(second);
      if (own.isEmpty() || Math.abs(own.getAsDouble() - usual) > WITHIN_SHARE * usual) {
        return second == 0 ? 0 : second + MEAN_SECONDS / 2;
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
