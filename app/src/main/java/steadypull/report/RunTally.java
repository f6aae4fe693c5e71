package steadypull.report;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import steadypull.compare.Run;
import steadypull.compare.RunSet;
import steadypull.compare.Side;

/**
 * Counts what a proof asks of the runs. Immutable.
 *
 * @param leastRuns of the side that has fewer
 * @param leastDays of the side that has fewer; runs of which no day is told are of one day
 * @param isAlternating whether the order was before, after and before again
 */
record RunTally(int leastRuns, int leastDays, boolean isAlternating) {
  private static final int ENOUGH_RUNS = 3;
  private static final int ENOUGH_DAYS = 2;

  static RunTally of(RunSet runs) {
    List<Run> before = runs.of(Side.BEFORE);
    List<Run> after = runs.of(Side.AFTER);
    return new RunTally(
        Math.min(before.size(), after.size()),
        Math.min(days(before), days(after)),
        isAround(before, after));
  }

  boolean hasRunsEnough() {
    return leastRuns >= ENOUGH_RUNS;
  }

  boolean isSpread() {
    return leastDays >= ENOUGH_DAYS || isAlternating;
  }

  private static int days(List<Run> runs) {
    Set<Object> days = new HashSet<>();
    runs.forEach(run -> days.add(run.day()));
    return days.size();
  }

  private static boolean isAround(List<Run> before, List<Run> after) {
    return after.stream()
        .anyMatch(
            between ->
                before.stream().anyMatch(run -> run.place() < between.place())
                    && before.stream().anyMatch(run -> run.place() > between.place()));
  }
}
