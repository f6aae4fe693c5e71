package steadypull.compare;

import java.util.HashMap;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.road.EnginePower;
import steadypull.road.LatestSamples;

/**
 * Feeds a day of pulls with samples as they come: at every whole second, before the first sample at
 * or after it, what is fresh is told. One thread.
 */
public final class PullFeed {
  private static final long SECOND_MICROS = 1_000_000;

  /** A polite reader asks for temperatures every few seconds. */
  private static final double FRESH_SECONDS = 15;

  /** Outside air changes over minutes and is asked for seldom. */
  private static final double SLOW_SECONDS = 300;

  private final LatestSamples samples = new LatestSamples();
  private PullList list;
  private int next;

  /** A day that begins now. */
  public PullFeed(PullPlan plan) {
    list = PullList.begin(plan);
  }

  /**
   * Takes a sample.
   *
   * @param sample not earlier than the one before, but for moments
   * @return what to do now
   */
  public PullStep accept(Sample sample) {
    for (; next * SECOND_MICROS <= sample.timeMicros(); next++) {
      list = list.after(second(next));
    }
    samples.accept(sample);
    return list.step();
  }

  /** Somebody says that the change is done. */
  public PullStep changed() {
    list = list.changed();
    return list.step();
  }

  /** What to do now. */
  public PullStep step() {
    return list.step();
  }

  private PullSecond second(int second) {
    long micros = second * SECOND_MICROS;
    Map<Channel, Double> readings = new HashMap<>();
    Stream.concat(Channels.thermal().stream(), Stream.of(Channels.AMBIENT_AIR_TEMP))
        .forEach(
            channel -> {
              double fresh =
                  channel.equals(Channels.AMBIENT_AIR_TEMP) ? SLOW_SECONDS : FRESH_SECONDS;
              samples
                  .within(channel, micros, fresh)
                  .ifPresent(celsius -> readings.put(channel, celsius));
            });
    OptionalDouble kilowatts =
        EnginePower.tell(samples, micros).stream().mapToDouble(EnginePower::kilowatts).findFirst();
    return new PullSecond(second, readings, kilowatts);
  }
}
