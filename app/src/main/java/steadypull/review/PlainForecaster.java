package steadypull.review;

import java.util.ArrayList;
import java.util.List;
import steadypull.channel.Channel;

/**
 * What simpler forecasters would have said of a drive, each channel by itself, with the delays of
 * the shipped rules: raised after 3 s, taken back after 20 s. A closed set.
 */
public enum PlainForecaster {
  /** Within 5 K of the limit. */
  THRESHOLD {
    @Override
    boolean warns(double[] celsius, int second, double limit) {
      return celsius[second] >= limit - NEAR_KELVIN;
    }
  },
  /** A straight line through the last 60 s (least squares) reaches the limit within 120 s. */
  STRAIGHT_LINE {
    @Override
    boolean warns(double[] celsius, int second, double limit) {
      return celsius[second] >= limit || ahead(celsius, second) >= limit;
    }
  };

  private static final double NEAR_KELVIN = 5;
  private static final int ON_DELAY_SECONDS = 3;
  private static final int OFF_DELAY_SECONDS = 20;
  private static final int LINE_SECONDS = 60;
  private static final int AHEAD_SECONDS = 120;

  /** Whether it would warn at a second, 60 or later; of a channel unheard it knows nothing. */
  abstract boolean warns(double[] celsius, int second, double limit);

  /** What it would have warned of, channel by channel. */
  public List<Warning> warnings(ScoredDrive drive) {
    List<Warning> warnings = new ArrayList<>();
    for (Channel channel : drive.watched()) {
      watch(channel, drive, warnings);
    }
    return warnings;
  }

  private void watch(Channel channel, ScoredDrive drive, List<Warning> warnings) {
    double limit = drive.limits().getOrDefault(channel, Double.NaN);
    double[] celsius = drive.celsius().getOrDefault(channel, new double[0]);
    int turning = 0;
    int from = 0;
    for (int second = LINE_SECONDS; second <= drive.seconds(); second++) {
      boolean isWarning = from > 0;
      turning = warns(celsius, second, limit) == isWarning ? 0 : turning + 1;
      if (!isWarning && turning > ON_DELAY_SECONDS) {
        from = second;
        turning = 0;
      } else if (isWarning && turning > OFF_DELAY_SECONDS) {
        warnings.add(new Warning(channel, limit, from, second));
        from = 0;
        turning = 0;
      }
    }
    if (from > 0) {
      warnings.add(new Warning(channel, limit, from, drive.seconds() + 1));
    }
  }

  /** The line two minutes ahead; NaN where the channel was not heard all along. */
  private static double ahead(double[] celsius, int second) {
    double middle = (LINE_SECONDS - 1) / 2.0;
    double mean = 0;
    double products = 0;
    double squares = 0;
    for (int i = 0; i < LINE_SECONDS; i++) {
      double value = celsius[second - LINE_SECONDS + 1 + i];
      mean += value / LINE_SECONDS;
      products += (i - middle) * value;
      squares += (i - middle) * (i - middle);
    }
    return mean + products / squares * (middle + AHEAD_SECONDS);
  }
}
