package steadypull.thermal;

import java.util.HashMap;
import java.util.Map;
import java.util.OptionalDouble;
import steadypull.channel.Channel;
import steadypull.channel.Sample;

/**
 * How often each channel comes, and so when it counts as stale: after 5 s if it is due each second,
 * later if it is asked for seldom. Pipeline thread only.
 */
final class ChannelPace {
  private static final double STALE_SECONDS = 5;

  /** A channel that misses two turns in a row and is late for the third is stale. */
  private static final double TURNS = 3;

  private static final double LONGEST_STALE_SECONDS = 60;

  /** A gap is not a pace; longer intervals teach nothing. */
  private static final double LONGEST_INTERVAL_SECONDS = 30;

  private static final double NEWEST_WEIGHT = 0.2;
  private static final double MICROS_PER_SECOND = 1e6;

  private record Pace(long lastMicros, double intervalSeconds) {}

  private final Map<Channel, Pace> paces = new HashMap<>();

  /** Takes a sample. */
  void accept(Sample sample) {
    paces.merge(
        sample.channel(), new Pace(sample.timeMicros(), 1), (before, now) -> next(before, now));
  }

  /** Age of the channel's last sample in seconds if it is stale or was never heard, else empty. */
  OptionalDouble staleFor(Channel channel, long timeMicros) {
    Pace pace = paces.get(channel);
    if (pace == null) {
      return OptionalDouble.of(timeMicros / MICROS_PER_SECOND);
    }
    double age = (timeMicros - pace.lastMicros()) / MICROS_PER_SECOND;
    double allowed =
        Math.clamp(TURNS * pace.intervalSeconds(), STALE_SECONDS, LONGEST_STALE_SECONDS);
    return age > allowed ? OptionalDouble.of(age) : OptionalDouble.empty();
  }

  private static Pace next(Pace before, Pace now) {
    double interval = (now.lastMicros() - before.lastMicros()) / MICROS_PER_SECOND;
    if (interval > LONGEST_INTERVAL_SECONDS) {
      return new Pace(now.lastMicros(), before.intervalSeconds());
    }
    double paced = before.intervalSeconds() + NEWEST_WEIGHT * (interval - before.intervalSeconds());
    return new Pace(now.lastMicros(), paced);
  }
}
