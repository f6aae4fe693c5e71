package steadypull.review;

import java.util.ArrayList;
import java.util.List;
import steadypull.channel.Channel;

/**
 * What simpler forecasters would have said of a drive, each channel by itself, with the delays of
 * the shipped rules. A closed set.
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
      return celsius[second] >= limit || ahead(celsius, second, 60) >= limit;
    }
  },
  /** The same through the last 30 s. */
  SHORT_LINE {
    @Override
    boolean warns(double[] celsius, int second, double limit) {
      return celsius[second] >= limit || ahead(celsius, second, 30) >= limit;
    }
  };

  private static final double NEAR_KELVIN = 5;
  private static final int AHEAD_SECONDS = 120;

  /** Whether it would warn at a second, 60 or later; of a channel unheard it knows nothing. */
  abstract boolean warns(double[] celsius, int second, double limit);

  /** What it would have warned of, channel by channel. */
  public List<Warning> warnings(ScoredDrive drive) {
    List<Warning> warnings = new ArrayList<>();
    for (Channel channel : drive.watched()) {
      double limit = drive.limits().getOrDefault(channel, Double.NaN);
      double[] celsius = drive.celsius().getOrDefault(channel, new double[0]);
      WarningDelays.watch(
          channel, limit, drive.seconds(), (second, _) -> warns(celsius, second, limit), warnings);
    }
    return warnings;
  }

  /** The line two minutes ahead; NaN where the channel was not heard all along. */
  private static double ahead(double[] celsius, int second, int span) {
    double middle = (span - 1) / 2.0;
    double mean = 0;
    double products = 0;
    double squares = 0;
    for (int i = 0; i < span; i++) {
      double value = celsius[second - span + 1 + i];
      mean += value / span;
      products += (i - middle) * value;
      squares += (i - middle) * (i - middle);
    }
    return mean + products / squares * (middle + AHEAD_SECONDS);
  }
}
