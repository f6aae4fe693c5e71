package steadypull.compare;

import java.util.Optional;
import java.util.OptionalDouble;
import steadypull.thermal.Belief;

/**
 * What the runs of one side show of the cooling, and where it would lead at the common conditions.
 * Immutable; empty where it cannot be told.
 *
 * @param joulesPerKelvin heat capacity C of fluid and metal
 * @param wattsPerKelvin conductance UA to outside air at 25 m/s and 1.2 kg/m3, the thermostat wide
 *     open where there is one; on a dynamometer with its fan as found
 * @param effectiveness of the cooler, 0 to 1
 * @param rejectedWatts heat given off where it settles
 * @param settles where the temperature settles, on the scale of {@link GainAt}
 * @param kelvinPerSecond rate of rise over the first 30 s
 * @param secondsToLimit median; empty also if never: then {@code settles} says so
 * @param secondsToDerate measured; empty if none of the runs derated
 * @param lostKilowattHours to derate, a run's mean
 * @param recoveryKelvinPerMinute fall at idle after the pull
 * @param sustainableKilowatts power that leaves 5 K to the limit at the common speed and outside
 *     air, as the runs tell power; empty also from half as much more than the runs pulled
 * @param hottestOutsideCelsius in which the common power still holds; empty also above 60
 */
public record SideFigures(
    Optional<Belief> joulesPerKelvin,
    Optional<Belief> wattsPerKelvin,
    Optional<Belief> effectiveness,
    Optional<Belief> rejectedWatts,
    Optional<Belief> settles,
    Optional<Belief> kelvinPerSecond,
    OptionalDouble secondsToLimit,
    OptionalDouble secondsToDerate,
    OptionalDouble lostKilowattHours,
    Optional<Belief> recoveryKelvinPerMinute,
    Optional<Belief> sustainableKilowatts,
    Optional<Belief> hottestOutsideCelsius) {}
