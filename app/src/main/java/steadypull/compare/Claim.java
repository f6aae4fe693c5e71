package steadypull.compare;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import steadypull.thermal.Belief;

/**
 * How strongly a gain may be claimed. Immutable.
 *
 * @param gain K, above 0 if cooler
 * @param low 2.5 % of the draws lie below
 * @param high 2.5 % lie above
 */
record Claim(Belief gain, double low, double high) {
  private static final double NORMAL_975 = 1.96;
  private static final double NORMAL_95 = 1.6449;
  private static final int RUNS_TO_PROVE = 3;
  private static final int DAYS_TO_PROVE = 2;

  /**
   * Repeats of the same pull agree within 2 to 3 K (common practice, no source); what is no larger
   * makes no difference.
   */
  private static final double SAME_KELVIN = 3;

  /** Of draws. */
  static Claim of(Draws draws, ToDoubleFunction<Drawn> gain) {
    return new Claim(draws.belief(gain), draws.quantile(gain, 0.025), draws.quantile(gain, 0.975));
  }

  /** Whether a one-sided bound of 97.5 % excludes zero, to either side. */
  boolean isClaimed() {
    return low > 0 || high < 0;
  }

  /**
   * The smallest change that could have shown, K: one that would have been claimed, half of the
   * times that it is there (the critical value of ISO 11843-1 at 2.5 %, from memory).
   */
  double smallest() {
    return NORMAL_975 * (gain.high() - gain.low()) / 2 / NORMAL_95;
  }

  /** No difference larger than this, K, if the runs show so: both bounds of 5 % within it. */
  OptionalDouble equivalentWithin() {
    double within = Math.max(Math.abs(gain.low()), Math.abs(gain.high()));
    return !isClaimed() && within <= SAME_KELVIN
        ? OptionalDouble.of(within)
        : OptionalDouble.empty();
  }

  /** Whether the bound of 5 % lies above the smallest change that could have shown. */
  boolean isLarge() {
    return Math.max(gain.low(), -gain.high()) > smallest();
  }

  Verdict verdict(List<Run> runs) {
    if (!isClaimed()) {
      return Verdict.NOT_PROVEN;
    }
    boolean bears = areEnough(runs) && areApart(runs) && isLarge();
    return bears ? Verdict.PROVEN : Verdict.LIKELY;
  }

  static boolean areEnough(List<Run> runs) {
    return count(runs, Side.BEFORE) >= RUNS_TO_PROVE && count(runs, Side.AFTER) >= RUNS_TO_PROVE;
  }

  private static long count(List<Run> runs, Side side) {
    return runs.stream().filter(run -> run.side() == side).count();
  }

  /** Two days a side, or before-after-before in the order in which sides were told. */
  static boolean areApart(List<Run> runs) {
    boolean areDays =
        days(runs, Side.BEFORE) >= DAYS_TO_PROVE && days(runs, Side.AFTER) >= DAYS_TO_PROVE;
    return areDays || isThereAndBack(runs);
  }

  private static long days(List<Run> runs, Side side) {
    Set<LocalDate> days =
        runs.stream()
            .filter(run -> run.side() == side)
            .map(Run::day)
            .flatMap(Optional::stream)
            .collect(Collectors.toSet());
    return days.size();
  }

  private static boolean isThereAndBack(List<Run> runs) {
    return runs.stream()
        .filter(run -> run.side() == Side.AFTER)
        .anyMatch(
            after ->
                runs.stream().anyMatch(r -> r.side() == Side.BEFORE && r.place() < after.place())
                    && runs.stream()
                        .anyMatch(r -> r.side() == Side.BEFORE && r.place() > after.place()));
  }
}
