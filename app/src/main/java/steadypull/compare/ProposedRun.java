package steadypull.compare;

import java.util.OptionalDouble;

/**
 * A part of a trip that may serve as a run, proposed by its load. Immutable.
 *
 * @param onsetSeconds of the trip, at which the load came on
 * @param endSeconds of the trip, at which it ended
 * @param heldSeconds from the onset for as long as the load stayed within 10 %
 * @param kilowatts mean over those seconds, at the wheels or, where that is not told, the engine
 * @param speedKilometresPerHour mean of the run; empty if it was not heard
 * @param ground road or rollers
 */
public record ProposedRun(
    double onsetSeconds,
    double endSeconds,
    int heldSeconds,
    double kilowatts,
    OptionalDouble speedKilometresPerHour,
    Run.Ground ground) {}
