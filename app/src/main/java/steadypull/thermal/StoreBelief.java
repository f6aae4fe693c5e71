package steadypull.thermal;

import steadypull.channel.Channel;

/**
 * What a whole trip says of one store: how much heat it holds and how well it gives heat off. The
 * first only delays, the second lasts. Immutable.
 *
 * @param channel that shows the store's temperature
 * @param joulesPerKelvin heat capacity, J/K
 * @param wattsPerKelvin conductance to outside air at 25 m/s and 1.2 kg/m3, the thermostat wide
 *     open where there is one, W/K
 */
public record StoreBelief(Channel channel, Belief joulesPerKelvin, Belief wattsPerKelvin) {}
