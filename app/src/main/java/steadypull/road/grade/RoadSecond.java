package steadypull.road.grade;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What one second of driving tells of the road. Immutable.
 *
 * @param seconds since the trip began
 * @param metresPerSecond road speed, 0 or more, as the vehicle told it
 * @param traction what pulls; empty where mass or torque is unknown, and at walking pace
 * @param altitudeMetres as a receiver told it in this second; empty if it did not
 * @param hasTurned whether the vehicle has just turned back, by its receiver
 */
public record RoadSecond(
    double seconds,
    double metresPerSecond,
    Optional<Traction> traction,
    OptionalDouble altitudeMetres,
    boolean hasTurned) {}
