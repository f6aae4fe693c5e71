package steadypull.vehicle;

import java.util.Set;
import steadypull.channel.Channel;
import steadypull.channel.Channels;

/**
 * What happens when a channel passes its limit, as the trade sees it (common practice, no source).
 */
public enum Consequence {
  /** Something breaks: the driver must act. */
  BREAKS,
  /** The engine control takes power away. */
  COSTS_POWER;

  private static final Set<Channel> CHARGE_SIDE =
      Set.of(
          Channels.CHARGE_COOLANT_TEMP,
          Channels.CHARGE_AIR_TEMP_IN,
          Channels.CHARGE_AIR_TEMP_OUT,
          Channels.INTAKE_AIR_TEMP);

  /** The consequence for a channel; one that we do not know is taken for the graver kind. */
  public static Consequence of(Channel channel) {
    return CHARGE_SIDE.contains(channel) ? COSTS_POWER : BREAKS;
  }
}
