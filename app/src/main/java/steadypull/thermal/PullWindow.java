package steadypull.thermal;

import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;
import java.util.DoubleSummaryStatistics;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;

/**
 * The last seconds of a pull as one, if they are alike: a gear change is no pull, nor is a pedal on
 * its way. Pipeline thread only.
 */
final class PullWindow {
  private static final int MOMENTS = 5;

  /** Fuel or air may be told up to three seconds after the engine's speed has changed. */
  private static final int STEADY_MOMENTS = 8;

  /** An engine whose speed moves more in eight seconds pulls at no one speed (estimated). */
  private static final double STEADY_LOG_RPM = 0.06;

  private record Entry(PullMoment moment, double strength) {}

  /**
   * Some seconds alike. NaN where nothing was told.
   *
   * @param seconds since trip start, of the last
   * @param strength median, in the unit of its basis
   * @param rpm median, r/min
   * @param turnsPerSpeed median, r/min for each km/h
   * @param speed median, km/h
   * @param leastPedal per cent
   * @param mostPedal per cent
   * @param kilopascals of outside air
   */
  record Pull(
      double seconds,
      double strength,
      double rpm,
      double turnsPerSpeed,
      double speed,
      double leastPedal,
      double mostPedal,
      double kilopascals) {}

  private final Deque<Entry> entries = new ArrayDeque<>();

  void forget() {
    entries.clear();
  }

  /** Takes a moment whose engine speed is told; gives the last seconds if they are alike. */
  Optional<Pull> accept(PullMoment now, double strength) {
    entries.addLast(new Entry(now, strength));
    if (entries.size() > STEADY_MOMENTS) {
      entries.removeFirst();
    }
    return isSteady() ? Optional.of(pull(now)) : Optional.empty();
  }

  private boolean isSteady() {
    DoubleSummaryStatistics rpm =
        entries.stream()
            .mapToDouble(each -> each.moment().engineRpm().orElseThrow())
            .summaryStatistics();
    return rpm.getCount() == STEADY_MOMENTS
        && Math.log(rpm.getMax() / rpm.getMin()) <= STEADY_LOG_RPM;
  }

  private Pull pull(PullMoment now) {
    double[] pedals = sorted(each -> or(each.moment().pedalPercent()));
    return new Pull(
        now.seconds(),
        middle(sorted(Entry::strength)),
        middle(sorted(each -> or(each.moment().engineRpm()))),
        middle(sorted(each -> or(each.moment().turnsPerSpeed()))),
        middle(sorted(each -> or(each.moment().kilometresPerHour()))),
        pedals[0],
        pedals[MOMENTS - 1],
        or(now.kilopascals()));
  }

  private double[] sorted(ToDoubleFunction<Entry> part) {
    double[] values = entries.stream().skip(STEADY_MOMENTS - MOMENTS).mapToDouble(part).toArray();
    Arrays.sort(values);
    return values;
  }

  private static double middle(double[] sorted) {
    return sorted[sorted.length / 2];
  }

  private static double or(OptionalDouble told) {
    return told.orElse(Double.NaN);
  }
}
