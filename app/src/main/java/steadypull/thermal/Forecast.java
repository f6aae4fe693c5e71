package steadypull.thermal;

import java.util.List;
import java.util.Optional;
import steadypull.channel.Channel;

/**
 * All thermal channels at one moment, under one assumption about the load to come. Immutable.
 *
 * @param timeMicros microseconds since trip start
 * @param assumption what is assumed about the load
 * @param channels one entry for every thermal channel that has been seen, in the vehicle's order
 */
public record Forecast(long timeMicros, Assumption assumption, List<ChannelForecast> channels) {
  public Forecast {
    channels = List.copyOf(channels);
  }

  /** The entry of a channel, or empty if the channel has not been seen. */
  public Optional<ChannelForecast> of(Channel channel) {
    return channels.stream().filter(each -> each.channel().equals(channel)).findFirst();
  }

  /** What is assumed about the load to come. A closed set. */
  public sealed interface Assumption {
    /** The present load goes on. */
    record LoadHeld() implements Assumption {}

    /** The road goes on as it is known, driven as of late. */
    record RoadKnown() implements Assumption {}

    /** The present grade goes on at another speed, reached by easing off. */
    record SpeedEased(double kilometresPerHour) implements Assumption {}

    /** The rig stops and the engine idles. */
    record StoppedAtIdle() implements Assumption {}

    /**
     * The same drive one gear lower: speed and wheel power stay, the engine turns faster. Answered
     * only while this drive has shown such a gear and the engine would not turn too fast in it;
     * else every channel is {@link ChannelForecast.Learning}.
     */
    record OneGearLower() implements Assumption {}

    /**
     * The same drive as if its air conditioning, now on, were off. Nothing here knows whether it is
     * on: who asks must know, or say "if it is on".
     */
    record AirConditioningOff() implements Assumption {}
  }
}
