package steadypull.vehicle;

import java.util.Objects;
import steadypull.channel.Channel;

/**
 * The temperature that a channel should stay under.
 *
 * @param channel a channel with a unit of degC
 * @param celsius degrees Celsius, -40 to 1200
 * @param provenance where the figure comes from
 */
public record Limit(Channel channel, double celsius, Provenance provenance) {
  public Limit {
    Objects.requireNonNull(channel);
    Objects.requireNonNull(provenance);
    if (!channel.unit().equals("degC")) {
      throw new IllegalArgumentException(
          "A limit belongs to a temperature in degC, found " + channel.header());
    }
    if (!(celsius >= -40 && celsius <= 1200)) {
      throw new IllegalArgumentException(
          "A limit of %s lies between -40 and 1200 degC, found %s"
              .formatted(channel.id(), celsius));
    }
  }
}
