package steadypull.vehicle.role;

import java.util.Set;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.vehicle.Vehicle;

/** Tells channels whose sensor is only assumed to sit where they say. Stateless. */
public final class AssumedPlaces {
  /** Their usual sources sit elsewhere in some makers' vehicles. */
  private static final Set<Channel> IN_QUESTION =
      Set.of(
          Channels.CHARGE_COOLANT_TEMP,
          Channels.CHARGE_AIR_TEMP_IN,
          Channels.CHARGE_AIR_TEMP_OUT,
          Channels.EXHAUST_TEMP_BEFORE_TURBINE,
          Channels.EXHAUST_TEMP_AFTER_TURBINE);

  private AssumedPlaces() {}

  /** Whether the channel's place is in question and nobody has confirmed or defined its signal. */
  public static boolean isAssumed(Channel channel, Vehicle vehicle) {
    return IN_QUESTION.contains(channel)
        && vehicle.source(channel).isEmpty()
        && vehicle.signals().stream().noneMatch(each -> each.channelId().equals(channel.id()));
  }
}
