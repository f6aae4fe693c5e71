package steadypull.compare;

import java.util.Random;
import steadypull.channel.Channel;
import steadypull.channel.Channels;

/**
 * How the sensors of one day lie beside the truth, noise and lag aside (common practice, no
 * source).
 *
 * @param outsideKelvin of the outside air, which soaks up heat
 * @param coolantKelvin of coolants
 * @param airFlowShare of the air flow
 * @param chargeAirKelvin of charge air before its cooler
 */
record SensorErrors(
    double outsideKelvin, double coolantKelvin, double airFlowShare, double chargeAirKelvin) {
  /** Of a vehicle, the same on all its days. */
  static SensorErrors ofVehicle(Random random) {
    return new SensorErrors(
        0.5 * random.nextGaussian(),
        0.5 * random.nextGaussian(),
        0.03 * random.nextGaussian(),
        1.0 * random.nextGaussian());
  }

  /** What a day adds. */
  SensorErrors andOfADay(Random random) {
    return new SensorErrors(
        outsideKelvin + 1.0 * random.nextGaussian(),
        coolantKelvin + 0.25 * random.nextGaussian(),
        airFlowShare + 0.012 * random.nextGaussian(),
        chargeAirKelvin + 0.4 * random.nextGaussian());
  }

  /** What a sensor tells in place of a value, cut to the channel's step as it comes. */
  double told(Channel channel, double value) {
    if (channel.equals(Channels.AMBIENT_AIR_TEMP)) {
      return Math.floor(value + outsideKelvin);
    }
    if (channel.equals(Channels.CHARGE_COOLANT_TEMP)
        || channel.equals(Channels.ENGINE_COOLANT_TEMP)) {
      return Math.floor(value + coolantKelvin + 0.5);
    }
    if (channel.equals(Channels.CHARGE_AIR_TEMP_IN)) {
      return Math.floor(value + chargeAirKelvin + 0.5);
    }
    return channel.equals(Channels.AIR_MASS_FLOW) ? value * (1 + airFlowShare) : value;
  }
}
