package steadypull.thermal;

import steadypull.channel.Channel;
import steadypull.channel.Channels;

/** The places where heat is kept, in the order in which heat flows through them in one step. */
enum Store {
  CHARGE_INLET(0),
  CHARGE_AIR(1),
  CHARGE_COOLANT(2),
  ENGINE_COOLANT(3),
  ENGINE_OIL(4),
  TRANSMISSION_FLUID(5),
  EXHAUST(6);

  static final int COUNT = values().length;

  private final int index;

  Store(int index) {
    this.index = index;
  }

  /** Place of the store in arrays that hold one value for each. */
  int index() {
    return index;
  }

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
