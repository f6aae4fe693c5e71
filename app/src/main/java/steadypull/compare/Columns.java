package steadypull.compare;

import java.util.Arrays;
import java.util.function.IntToDoubleFunction;
import steadypull.channel.Channel;

/** Reads a run's channels without gaps. Stateless. */
final class Columns {
  private Columns() {}

  /** Whether a channel was heard in half of the seconds of the load or more. */
  static boolean isHeard(Run run, Channel channel) {
    double[] loaded = run.series().span(channel, 0, run.loadSeconds());
    return Arrays.stream(loaded).filter(each -> !Double.isNaN(each)).count() * 2
        >= run.loadSeconds();
  }

  /**
   * A channel's values from a second to before another; where nothing was heard the last value is
   * held, before the first the first, and if there is none, the usual.
   */
  static double[] held(RunSeries series, Channel channel, int from, int to, double usual) {
    double[] values = series.span(channel, from, to);
    double last =
        Arrays.stream(values).filter(each -> !Double.isNaN(each)).findFirst().orElse(usual);
    for (int i = 0; i < values.length; i++) {
      last = Double.isNaN(values[i]) ? last : values[i];
      values[i] = last;
    }
    return values;
  }

  /** One value for each of so many seconds. */
  static double[] each(int seconds, IntToDoubleFunction value) {
    double[] values = new double[seconds];
    Arrays.setAll(values, value);
    return values;
  }

  /** Mean of the values that are numbers; NaN if none is. */
  static double mean(double[] values) {
    return Arrays.stream(values).filter(each -> !Double.isNaN(each)).average().orElse(Double.NaN);
  }
}
