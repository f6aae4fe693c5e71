package steadypull.thermal;

import steadypull.channel.Channel;
import steadypull.channel.Channels;

/** The places where heat is kept, in the order in which heat flows through them in one step. */
enum Store {
  CHARGE_INLET,
  CHARGE_AIR,
  CHARGE_COOLANT,
  ENGINE_COOLANT,
  ENGINE_OIL,
  TRANSMISSION_FLUID,
  EXHAUST;

  static final int COUNT = values().length;

  /** The channel that shows its temperature. */
  Channel channel() {
    return switch (this) {
      case CHARGE_INLET -> Channels.CHARGE_AIR_TEMP_IN;
      case CHARGE_AIR -> Channels.CHARGE_AIR_TEMP_OUT;
      case CHARGE_COOLANT -> Channels.CHARGE_COOLANT_TEMP;
      case ENGINE_COOLANT -> Channels.ENGINE_COOLANT_TEMP;
      case ENGINE_OIL -> Channels.ENGINE_OIL_TEMP;
      case TRANSMISSION_FLUID -> Channels.TRANSMISSION_FLUID_TEMP;
      case EXHAUST -> Channels.EXHAUST_TEMP_BEFORE_TURBINE;
    };
  }
}
