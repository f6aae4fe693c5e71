package steadypull.compare;

import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import steadypull.channel.Channels;

/**
 * Power that the runs of a side lost under their load: delivered torque at least 5 points under
 * demanded for 3 s, beside the gap of the first seconds, as a derate is told elsewhere. Stateless.
 */
final class Derates {
  private static final double POINTS = 5;
  private static final int FOR_SECONDS = 3;

  /** Boost and gearbox have settled, and nothing is hot yet. */
  private static final int FIRST_SECOND = 6;

  private static final int COLD_UNTIL = 16;
  private static final double SECONDS_PER_HOUR = 3600;

  private Derates() {}

  private static boolean isTold(Run run) {
    return List.of(
            Channels.DEMANDED_TORQUE,
            Channels.DELIVERED_TORQUE,
            Channels.REFERENCE_TORQUE,
            Channels.ENGINE_SPEED)
        .stream()
        .allMatch(each -> Columns.isHeard(run, each));
  }

  private static List<Run> told(List<Run> runs, Side side) {
    return runs.stream()
        .filter(run -> run.side() == side && run.loadSeconds() > COLD_UNTIL && isTold(run))
        .toList();
  }

  /** Seconds from the onset to the first derate, mean of the runs that had one. */
  static OptionalDouble seconds(List<Run> runs, Side side) {
    return told(runs, side).stream()
        .mapToInt(run -> began(missing(run)))
        .filter(second -> second >= 0)
        .average();
  }

  /** Energy lost in a run, kWh, mean of all; empty if no run tells its torques. */
  static OptionalDouble kilowattHours(List<Run> runs, Side side) {
    return told(runs, side).stream().mapToDouble(Derates::lost).average();
  }

  private static double lost(Run run) {
    double[] missing = missing(run);
    int began = began(missing);
    if (began < 0) {
      return 0;
    }
    double[] demanded = Power.ofTorque(run, Channels.DEMANDED_TORQUE, 0, run.loadSeconds());
    double[] delivered = Power.ofTorque(run, Channels.DELIVERED_TORQUE, 0, run.loadSeconds());
    return IntStream.range(began, missing.length)
            .filter(second -> missing[second] > 0)
            .mapToDouble(second -> Math.max(0, demanded[second] - delivered[second]))
            .sum()
        / SECONDS_PER_HOUR;
  }

  /** Points of torque that are missing at each second of the load, beside those of its start. */
  private static double[] missing(Run run) {
    int seconds = run.loadSeconds();
    double[] demanded = Columns.held(run.series(), Channels.DEMANDED_TORQUE, 0, seconds, 0);
    double[] delivered = Columns.held(run.series(), Channels.DELIVERED_TORQUE, 0, seconds, 0);
    double[] gap = Columns.each(seconds, i -> demanded[i] - delivered[i]);
    double cold =
        IntStream.range(FIRST_SECOND, COLD_UNTIL).mapToDouble(i -> gap[i]).average().orElse(0);
    return Columns.each(seconds, i -> gap[i] - Math.max(0, cold));
  }

  private static int began(double[] missing) {
    int last = 0;
    for (int second = FIRST_SECOND; second < missing.length; second++) {
      last = missing[second] >= POINTS ? last + 1 : 0;
      if (last == FOR_SECONDS) {
        return second - FOR_SECONDS + 1;
      }
    }
    return -1;
  }
}
