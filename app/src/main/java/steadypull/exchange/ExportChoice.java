package steadypull.exchange;

import java.util.List;
import steadypull.channel.Channel;
import steadypull.channel.Channels;

/**
 * Which channels of a trip leave the library.
 *
 * @param isMeasuredOnly leaves out what the program has computed
 * @param isWithoutPositions leaves out latitude and longitude, so that nobody sees where it was
 */
public record ExportChoice(boolean isMeasuredOnly, boolean isWithoutPositions) {
  /** Everything. */
  public static final ExportChoice ALL = new ExportChoice(false, false);

  private static final List<Channel> POSITIONS = List.of(Channels.LATITUDE, Channels.LONGITUDE);

  /** Whether the samples of that channel are written. */
  public boolean includes(Channel channel) {
    return !(isMeasuredOnly && Channels.derived().contains(channel))
        && !(isWithoutPositions && POSITIONS.contains(channel));
  }
}
