package steadypull.compare;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import steadypull.channel.Channel;
import steadypull.thermal.Belief;

/** How fast the runs of a side cooled once their load had ended. Stateless. */
final class Recovery {
  private static final int SECONDS = 60;

  /** An engine that still gives more than this share of its load does not idle. */
  private static final double IDLE_SHARE = 0.25;

  /** Two readings in steps of one degree, half a degree each way: JCGM 100, 4.3.7; K per minute. */
  private static final double READING_KELVIN = 0.41;

  /** Fan and wind make one fall differ from the next by so much (estimated). */
  private static final double ALONE_SHARE = 0.1;

  private Recovery() {}

  /** Fall in the first minute after the load, K, with its interval; empty if no run shows it. */
  static Optional<Belief> kelvinPerMinute(List<Run> runs, Side side, Channel channel) {
    double[] falls =
        runs.stream()
            .filter(run -> run.side() == side)
            .map(run -> fall(run, channel))
            .flatMapToDouble(OptionalDouble::stream)
            .toArray();
    return falls.length == 0
        ? Optional.empty()
        : Optional.of(MeanOfRuns.of(falls, READING_KELVIN, ALONE_SHARE));
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
