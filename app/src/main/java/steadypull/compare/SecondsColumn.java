package steadypull.compare;

import java.util.Arrays;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;

/**
 * One channel of a trip brought to whole seconds, as its samples pass by: between two neighbouring
 * samples it runs straight, a channel of steps stays until the next. One thread.
 */
final class SecondsColumn {
  private static final double MICROS = 1e6;

  /** A polite reader asks for temperatures every few seconds; twice that still is one reading. */
  private static final double NEIGHBOUR_SECONDS = 15;

  /** Outside air and its pressure change over minutes and are asked for seldom. */
  private static final double SLOW_NEIGHBOUR_SECONDS = 300;

  /** How long the last value before a silence stands. */
  private static final double LAST_SECONDS = 1;

  private final boolean isStepped;
  private final boolean isConstant;
  private final double neighbourSeconds;
  private double[] values = new double[1024];
  private int filled;
  private double lastSeconds = Double.NaN;
  private double last = Double.NaN;

  SecondsColumn(Channel channel) {
    isConstant = channel.equals(Channels.REFERENCE_TORQUE);
    isStepped =
        isConstant || channel.equals(Channels.GEAR) || channel.equals(Channels.FILTER_REGENERATION);
    boolean isSlow =
        channel.equals(Channels.AMBIENT_AIR_TEMP) || channel.equals(Channels.BAROMETRIC_PRESSURE);
    neighbourSeconds = isSlow ? SLOW_NEIGHBOUR_SECONDS : NEIGHBOUR_SECONDS;
  }

  /** Takes a sample; one that lies before the last is late and passed over. */
  void accept(Sample sample) {
    double seconds = sample.timeMicros() / MICROS;
    if (seconds < lastSeconds) {
      return;
    }
    fillUpTo(seconds, sample.value());
    lastSeconds = seconds;
    last = sample.value();
  }

  private void fillUpTo(double seconds, double value) {
    double span = seconds - lastSeconds;
    for (; filled < seconds; filled++) {
      append(between(filled, span, value));
    }
    if (filled == seconds) {
      append(value);
      filled++;
    }
  }

  /** The value at a whole second between the last sample and the present one. */
  private double between(int second, double span, double value) {
    double since = second - lastSeconds;
    if (Double.isNaN(lastSeconds) || isConstant || since <= 0) {
      return last;
    }
    if (span > neighbourSeconds) {
      return since <= LAST_SECONDS ? last : Double.NaN;
    }
    return isStepped ? last : last + (value - last) * since / span;
  }

  private void append(double value) {
    if (filled == values.length) {
      values = Arrays.copyOf(values, 2 * values.length);
    }
    values[filled] = value;
  }

  /** The values of so many seconds from 0 on, NaN where nothing fresh was heard. */
  double[] values(int seconds) {
    double[] all = new double[seconds];
    Arrays.fill(all, Double.NaN);
    System.arraycopy(values, 0, all, 0, Math.min(seconds, filled));
    for (int second = filled; second < seconds; second++) {
      if (isConstant || second - lastSeconds <= LAST_SECONDS) {
        all[second] = last;
      }
    }
    return all;
  }
}
