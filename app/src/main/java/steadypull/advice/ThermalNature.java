package steadypull.advice;

import java.util.Map;
import java.util.Set;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.vehicle.Consequence;

/**
 * What a thermal channel means to the driver: whether something breaks at its limit, and how slowly
 * it moves. Immutable.
 */
final class ThermalNature {
  /** Heat stores of several minutes, for which 600 s count instead of 180 s. */
  private static final Set<Channel> SLOW =
      Set.of(
          Channels.ENGINE_COOLANT_TEMP, Channels.ENGINE_OIL_TEMP, Channels.TRANSMISSION_FLUID_TEMP);

  private static final Map<Channel, String> WORDS =
      Map.of(
          Channels.ENGINE_COOLANT_TEMP, "coolant",
          Channels.CHARGE_COOLANT_TEMP, "charge-coolant",
          Channels.CHARGE_AIR_TEMP_OUT, "charge-air",
          Channels.ENGINE_OIL_TEMP, "engine-oil",
          Channels.TRANSMISSION_FLUID_TEMP, "gearbox-oil",
          Channels.EXHAUST_TEMP_BEFORE_TURBINE, "exhaust");

  private ThermalNature() {}

  static boolean breaks(Channel channel) {
    return Consequence.of(channel) == Consequence.BREAKS;
  }

  static boolean isSlow(Channel channel) {
    return SLOW.contains(channel);
  }

  /** The plain word for a channel in rule ids and text keys, such as {@code charge-air}. */
  static String word(Channel channel) {
    String word = WORDS.get(channel);
    return word != null ? word : channel.id().replace('_', '-');
  }
}
