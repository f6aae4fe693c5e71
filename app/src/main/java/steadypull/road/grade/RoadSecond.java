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
 * @param routeMetres the height that an imported route tells for this second's place, in its own
 *     datum; empty if none did. Whoever learns roads must not see it.
 * @param turn the turn back that the receiver shows in this second, which may be a few seconds
 *     after it was driven; empty if there is none
 */
public record RoadSecond(
    double seconds,
    double metresPerSecond,
    Optional<Traction> traction,
    OptionalDouble altitudeMetres,
    OptionalDouble routeMetres,
    Optional<Turn> turn) {

  /** A second of which no route tells anything. */
  RoadSecond(
      double seconds,
      double metresPerSecond,
      Optional<Traction> traction,
      OptionalDouble altitudeMetres,
      Optional<Turn> turn) {
    this(seconds, metresPerSecond, traction, altitudeMetres, OptionalDouble.empty(), turn);
  }

  /** The same second with another turn, or none. */
  RoadSecond with(Optional<Turn> other) {
    return new RoadSecond(seconds, metresPerSecond, traction, altitudeMetres, routeMetres, other);
  }

  /** The same second with the height that a route tells. */
  RoadSecond alongRoute(double metresUp) {
    return new RoadSecond(
        seconds, metresPerSecond, traction, altitudeMetres, OptionalDouble.of(metresUp), turn);
  }
}
