package steadypull.thermal;

import java.util.ArrayDeque;
import java.util.Deque;

/**
 * How much the power of this drive wanders within a minute. The road ahead is unknown; a band that
 * pretended that the present load certainly goes on would be a lie. Pipeline thread only.
 */
final class LoadSpread {
  private static final double SPAN_SECONDS = 60;
  private static final double MEMORY_SECONDS = 240;

  /** Mean absolute deviation of a normal distribution is 0.798 of its standard deviation. */
  private static final double MEAN_ABSOLUTE_OF_NORMAL = 0.798;

  private static final double PRIOR_KILOWATTS = 18;
  private static final double PRIOR_WEIGHT_SECONDS = 120;

  private record Past(double seconds, double kilowatts) {}

  private final Deque<Past> past = new ArrayDeque<>();
  private double weightedChange = PRIOR_KILOWATTS * MEAN_ABSOLUTE_OF_NORMAL * PRIOR_WEIGHT_SECONDS;
  private double weight = PRIOR_WEIGHT_SECONDS;

  /** Takes the held power of one moment. */
  void accept(double seconds, double kilowatts) {
    if (!past.isEmpty() && seconds - past.getLast().seconds() > SPAN_SECONDS / 4) {
      past.clear();
    }
    double step = past.isEmpty() ? 0 : seconds - past.getLast().seconds();
    past.addLast(new Past(seconds, kilowatts));
    if (seconds - past.getFirst().seconds() >= SPAN_SECONDS) {
      double change = Math.abs(kilowatts - past.removeFirst().kilowatts());
      double kept = Math.exp(-step / MEMORY_SECONDS);
      weightedChange = weightedChange * kept + change * step;
      weight = weight * kept + step;
    }
  }

  /** Standard deviation of the change of power after the given number of seconds, kW. */
  double kilowattsAfter(double seconds) {
    double afterSpan = weightedChange / weight / MEAN_ABSOLUTE_OF_NORMAL;
    return afterSpan * Math.sqrt(Math.expm1(-seconds / SPAN_SECONDS) / Math.expm1(-1));
  }
}
