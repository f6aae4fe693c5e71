package steadypull.compare;

import java.util.Optional;
import java.util.OptionalDouble;
import steadypull.thermal.Belief;

/**
 * What the runs of one side show of the cooling, and where it would lead at the common conditions.
 * Immutable; empty where it cannot be told.
 *
 * @param joulesPerKelvin heat capacity C
 * @param wattsPerKelvin conductance UA at 25 m/s, or on a dynamometer as found
 * @param effectiveness of the cooler, 0 to 1
 * @param rejectedWatts heat given off where it settles
 * @param settles where the temperature settles, on the scale of {@link GainAt}
 * @param kelvinPerSecond rate of rise over the first 30 s
 * @param secondsToLimit median; empty also if never: then {@code settles} says so
 * @param secondsToDerate measured; empty if none of the runs derated
 * @param lostKilowattHours to derate, a run's mean
 * @param recoveryKelvinPerMinute fall at idle after the pull
 * @param sustainableKilowatts power that leaves 5 K at the reference climb
 * @param hottestOutsideCelsius at which the reference climb still holds
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
