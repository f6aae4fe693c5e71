package steadypull.compare;

import java.util.List;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.vehicle.CoolingLayout;

/**
 * Which store a compared channel shows, and how. Immutable.
 *
 * @param channel compared
 * @param measured channel whose readings the store is fitted to
 * @param circuit its physics
 * @param isAboveOutside whether it is compared above outside air; else in absolute degrees
 * @param isBehindCooler whether the compared channel is the air behind the cooler of the store
 */
record Store(
    Channel channel,
    Channel measured,
    Circuit circuit,
    boolean isAboveOutside,
    boolean isBehindCooler) {
  /** Whether the cooler's core is itself the store, seen in the air behind it. */
  boolean isCoreItself() {
    return measured.equals(Channels.CHARGE_AIR_TEMP_OUT);
  }

  /** The store of a channel as the runs show it. */
  static Store of(Channel channel, CoolingLayout layout, List<Run> runs) {
    if (channel.equals(Channels.ENGINE_COOLANT_TEMP)) {
      return new Store(channel, channel, new ThermostatCircuit(), false, false);
    }
    boolean isWaterHeard =
        layout == CoolingLayout.WATER_TO_AIR
            && runs.stream().allMatch(run -> Columns.isHeard(run, Channels.CHARGE_COOLANT_TEMP));
    if (channel.equals(Channels.CHARGE_AIR_TEMP_OUT) && isWaterHeard) {
      return new Store(channel, Channels.CHARGE_COOLANT_TEMP, chargeCircuit(), true, true);
    }
    if (channel.equals(Channels.CHARGE_COOLANT_TEMP)
        || (channel.equals(Channels.CHARGE_AIR_TEMP_OUT) && layout == CoolingLayout.WATER_TO_AIR)) {
      return new Store(channel, channel, chargeCircuit(), true, false);
    }
    if (channel.equals(Channels.CHARGE_AIR_TEMP_OUT)) {
      return new Store(channel, channel, core(), true, false);
    }
    boolean isOil =
        channel.equals(Channels.ENGINE_OIL_TEMP)
            || channel.equals(Channels.TRANSMISSION_FLUID_TEMP);
    return new Store(channel, channel, isOil ? oil() : core(), !isOil, false);
  }

  /** A store without a warm end. */
  private static final Prior NO_WARM_END = Prior.positive(1e-7, 0.1);

  /**
   * 6 L of 50/50 coolant is 22 kJ/K (ASHRAE data), core, hoses and radiator half as much again; 8
   * to 30 kW at 30 to 60 K above outside (common practice, no source).
   */
  private static Circuit chargeCircuit() {
    return new PlainCircuit(
        Prior.positive(32_000, 0.7),
        Prior.positive(270, 0.8),
        Prior.positive(4, 0.5),
        // A third of the circuit over 10 to 30 L/min of coolant (common practice, no source).
        Prior.positive(3e-4, 0.5));
  }

  /** Aluminium of a core in the air (estimated). */
  private static Circuit core() {
    return new PlainCircuit(
        Prior.positive(7000, 1), Prior.positive(500, 1), Prior.positive(4, 0.6), NO_WARM_END);
  }

  /** By shares of the power alone (estimated). */
  private static Circuit oil() {
    return new PlainCircuit(
        Prior.positive(35_000, 1), Prior.positive(100, 1), Prior.positive(6, 0.5), NO_WARM_END);
  }
}
