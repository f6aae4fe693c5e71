package steadypull.thermal;

import java.util.Objects;
import steadypull.channel.Channel;

/** What a vehicle can do for ever without a channel settling over its limit. A closed set. */
public sealed interface Sustainable {

  /**
   * Heat sets the bound: four times in five it lies between the outer two.
   *
   * @param p10 one time in ten less
   * @param p50 as often less as more
   * @param p90 one time in ten more
   * @param channel that settles at its limit there
   */
  record UpTo(double p10, double p50, double p90, Channel channel) implements Sustainable {
    public UpTo {
      Objects.requireNonNull(channel);
    }
  }

  /**
   * No channel reaches its limit as far as the drive lets tell.
   *
   * @param value the greatest that was tried
   */
  record AtLeast(double value) implements Sustainable {}

  /** Even the least that was tried is too much. */
  record Nothing() implements Sustainable {}
}
