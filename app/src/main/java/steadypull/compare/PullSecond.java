package steadypull.compare;

import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import steadypull.channel.Channel;

/**
 * What is known at one second of a day of pulls. Immutable.
 *
 * @param second since the start of the trip
 * @param readings latest fresh value of each channel
 * @param kilowatts of the engine; empty if it cannot be told
 */
public record PullSecond(int second, Map<Channel, Double> readings, OptionalDouble kilowatts) {
  public PullSecond {
    readings = Map.copyOf(readings);
  }

  /** A channel's value; empty if nothing fresh was heard. */
  Optional<Double> reading(Channel channel) {
    return Optional.ofNullable(readings.get(channel));
  }
}
