package steadypull.road.load;

import java.util.OptionalDouble;

/**
 * What happened from one second of a trip to the next, in terms of energy. Immutable.
 *
 * @param seconds time at its end
 * @param span its length, s, above 0
 * @param metres driven, 0 or more
 * @param isPulled whether the engine pulled all the time, so that nobody braked
 * @param wheelJoules what the wheels got, if it pulled
 * @param dragJoules what the drag area that is assumed would have taken without wind
 * @param headMetres altitude and the height that the speed is worth, at the end; empty if no
 *     receiver told an altitude
 */
record HeadStep(
    double seconds,
    double span,
    double metres,
    boolean isPulled,
    double wheelJoules,
    double dragJoules,
    OptionalDouble headMetres) {}
