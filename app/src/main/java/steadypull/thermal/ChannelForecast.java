package steadypull.thermal;

import java.util.Objects;
import java.util.Optional;
import steadypull.channel.Channel;

/** What is known about one thermal channel's near future. A closed set. */
public sealed interface ChannelForecast {

  /** The channel that is meant. */
  Channel channel();

  /** Too little has been seen for a forecast. */
  record Learning(Channel channel) implements ChannelForecast {}

  /**
   * The channel, or an input without which its model is blind, is stale.
   *
   * @param channel the channel
   * @param lastHeardSecondsAgo age of the last sample of the stale input, seconds
   */
  record NoData(Channel channel, double lastHeardSecondsAgo) implements ChannelForecast {}

  /**
   * A forecast.
   *
   * @param channel the channel
   * @param nowCelsius the present filtered temperature, degC
   * @param fan the next 600 s
   * @param settlesAtCelsius where it would settle if the assumed load went on for ever, degC
   * @param toLimit when it meets its limit; empty if the channel has no limit
   */
  record Ready(
      Channel channel,
      double nowCelsius,
      Fan fan,
      double settlesAtCelsius,
      Optional<LimitForecast> toLimit)
      implements ChannelForecast {
    public Ready {
      Objects.requireNonNull(channel);
      Objects.requireNonNull(fan);
      Objects.requireNonNull(toLimit);
    }
  }
}
