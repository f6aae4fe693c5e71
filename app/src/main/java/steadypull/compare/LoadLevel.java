package steadypull.compare;

import java.util.Comparator;
import java.util.List;

/**
 * A load about which some of the runs pulled: a candidate for the one that is compared, since a
 * trip may hold long climbs and short ones. Immutable.
 *
 * @param kilowatts of the run that stands in its middle
 * @param before how many runs before pulled about that
 * @param after likewise
 * @param seconds under load of all of them
 */
record LoadLevel(double kilowatts, long before, long after, int seconds) {
  /**
   * What is farther apart is another load, which no model should be asked to bridge (our choice).
   */
  static final double MOST_SHARE = 0.15;

  /** The most pairs first, then the most before, then the longest. */
  private static final Comparator<LoadLevel> BEST =
      Comparator.<LoadLevel>comparingLong(level -> Math.min(level.before, level.after))
          .thenComparingLong(LoadLevel::before)
          .thenComparingInt(LoadLevel::seconds)
          .thenComparingDouble(LoadLevel::kilowatts);

  /** The level on which most runs can be compared, kW; NaN if there is no run. */
  static double best(List<FoundRun> runs, int window) {
    return runs.stream()
        .map(run -> about(run.kilowatts(window), runs, window))
        .max(BEST)
        .map(LoadLevel::kilowatts)
        .orElse(Double.NaN);
  }

  /** Whether a load is near enough to another. */
  static boolean isAlike(double own, double kilowatts) {
    return Math.abs(own - kilowatts) <= MOST_SHARE * kilowatts;
  }

  private static LoadLevel about(double kilowatts, List<FoundRun> runs, int window) {
    List<Run> alike =
        runs.stream()
            .filter(found -> isAlike(found.kilowatts(window), kilowatts))
            .map(FoundRun::run)
            .toList();
    long before = alike.stream().filter(run -> run.side() == Side.BEFORE).count();
    return new LoadLevel(
        kilowatts, before, alike.size() - before, alike.stream().mapToInt(Run::loadSeconds).sum());
  }
}
