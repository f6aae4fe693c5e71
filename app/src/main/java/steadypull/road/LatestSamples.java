package steadypull.road;

import java.util.HashMap;
import java.util.Map;
import java.util.OptionalDouble;
import steadypull.channel.Channel;
import steadypull.channel.Sample;

/**
 * The last sample of every channel, and how old it is. What is too old is not told: a stale channel
 * is not a steady one. Pipeline thread only.
 */
public final class LatestSamples {
  private static final double MICROS_PER_SECOND = 1e6;

  private final Map<Channel, Sample> latest = new HashMap<>();

  /** Takes a sample. */
  public void accept(Sample sample) {
    latest.put(sample.channel(), sample);
  }

  /** The last value, or empty if none came within the given seconds before the given time. */
  public OptionalDouble within(Channel channel, long timeMicros, double seconds) {
    Sample sample = latest.get(channel);
    if (sample == null || age(sample, timeMicros) > seconds) {
      return OptionalDouble.empty();
    }
    return OptionalDouble.of(sample.value());
  }

  /**
   * The last value that came in the second which ends at a moment: at its beginning or later, and
   * before its end. Who asks at each whole second gets every value at most once.
   */
  public OptionalDouble inSecondBefore(Channel channel, long timeMicros) {
    return within(channel, timeMicros, 1);
  }

  /** The last value however old, or empty if none ever came. */
  public OptionalDouble ever(Channel channel) {
    return within(channel, Long.MAX_VALUE, Double.POSITIVE_INFINITY);
  }

  /** Age of the last sample in seconds, or empty if none ever came. */
  public OptionalDouble secondsSince(Channel channel, long timeMicros) {
    Sample sample = latest.get(channel);
    return sample == null ? OptionalDouble.empty() : OptionalDouble.of(age(sample, timeMicros));
  }

  private static double age(Sample sample, long timeMicros) {
    return (timeMicros - sample.timeMicros()) / MICROS_PER_SECOND;
  }
}
