package steadypull.compare;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.hipparchus.distribution.continuous.TDistribution;
import steadypull.channel.Channel;
import steadypull.thermal.Belief;

/** How fast the runs of a side cooled once their load had ended. Stateless. */
final class Recovery {
  private static final int SECONDS = 60;

  /** An engine that still gives more than this share of its load does not idle. */
  private static final double IDLE_SHARE = 0.25;

  /** Two readings in steps of one degree, half a degree each way: JCGM 100, 4.3.7; K per minute. */
  private static final double READING_KELVIN = 0.41;

  private static final double NORMAL_95 = 1.6449;

  private Recovery() {}

  /** Fall in the first minute after the load, K, with its interval; empty if no run shows it. */
  static Optional<Belief> kelvinPerMinute(List<Run> runs, Side side, Channel channel) {
    double[] falls =
        runs.stream()
            .filter(run -> run.side() == side)
            .map(run -> fall(run, channel))
            .flatMapToDouble(OptionalDouble::stream)
            .toArray();
    if (falls.length == 0) {
      return Optional.empty();
    }
    double mean = Arrays.stream(falls).average().orElseThrow();
    double reading = NORMAL_95 * READING_KELVIN / Math.sqrt(falls.length);
    double half = Math.hypot(reading, falls.length > 1 ? scatter(falls, mean) : mean * 0.15);
    return Optional.of(new Belief(mean - half, mean, mean + half));
  }

  /** Half the interval of nine in ten of a mean, by its runs alone (JCGM 100, 4.2 and G.3). */
  private static double scatter(double[] falls, double mean) {
    int free = falls.length - 1;
    double squares = Arrays.stream(falls).map(each -> (each - mean) * (each - mean)).sum();
    double deviation = Math.sqrt(squares / free / falls.length);
    return new TDistribution(free).inverseCumulativeProbability(0.95) * deviation;
  }

  private static OptionalDouble fall(Run run, Channel channel) {
    int end = run.loadSeconds();
    if (run.series().endSecond() < end + SECONDS) {
      return OptionalDouble.empty();
    }
    double after = Columns.mean(Power.kilowatts(run, end + 5, end + SECONDS));
    double under = Columns.mean(Power.kilowatts(run, 0, end));
    double hot = Columns.mean(run.series().span(channel, end, end + 3));
    double cool = Columns.mean(run.series().span(channel, end + SECONDS - 3, end + SECONDS));
    boolean isTold = after <= IDLE_SHARE * under && !Double.isNaN(hot) && !Double.isNaN(cool);
    return isTold ? OptionalDouble.of((hot - cool) * 60 / (SECONDS - 3)) : OptionalDouble.empty();
  }
}
