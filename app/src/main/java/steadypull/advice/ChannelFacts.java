package steadypull.advice;

import java.util.Optional;
import java.util.OptionalDouble;
import steadypull.channel.Channel;
import steadypull.thermal.ChannelForecast;
import steadypull.thermal.LimitForecast;

/**
 * One thermal channel at one moment, as far as rules and words need it. Immutable.
 *
 * @param channel the channel
 * @param value degC now, if heard lately
 * @param limit degC, if it has a limit
 * @param forecast what comes under the present load, if that can be told
 * @param isDerating whether power is being cut because of it
 */
record ChannelFacts(
    Channel channel,
    OptionalDouble value,
    OptionalDouble limit,
    Optional<ChannelForecast.Ready> forecast,
    boolean isDerating) {

  Optional<LimitForecast> toLimit() {
    return forecast.flatMap(ChannelForecast.Ready::toLimit);
  }

  boolean isOverLimit() {
    return value.isPresent() && limit.isPresent() && value.getAsDouble() >= limit.getAsDouble();
  }

  /** Median seconds to the limit; 0 when it is over, empty if never or unknown. */
  OptionalDouble secondsToLimit() {
    return isOverLimit()
        ? OptionalDouble.of(0)
        : toLimit().map(LimitForecast::seconds).orElse(OptionalDouble.empty());
  }

  /** Probability that the limit is reached within the time that counts for this channel. */
  OptionalDouble probabilityInTime() {
    return toLimit()
        .map(each -> OptionalDouble.of(probabilityInTime(channel, each)))
        .orElse(OptionalDouble.empty());
  }

  static double probabilityInTime(Channel channel, LimitForecast toLimit) {
    return ThermalNature.isSlow(channel) ? toLimit.probability600() : toLimit.probability180();
  }
}
