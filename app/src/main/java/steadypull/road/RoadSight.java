package steadypull.road;

import java.util.OptionalDouble;

/**
 * Something that knows roads and looks ahead of a moving vehicle: an imported route, a trip driven
 * before, or the memory of roads. Told in the order of time; pipeline thread only.
 */
public interface RoadSight {
  /** Takes a fix of the receiver. */
  void fixed(PositionFix fix);

  /**
   * Takes what the vehicle has driven, so that tunnels and missing fixes do not stop the look
   * ahead.
   *
   * @param seconds since the trip began
   * @param metres since the last call, 0 or more
   */
  void moved(double seconds, double metres);

  /**
   * Takes the grade that the vehicle itself shows in this second, where it shows one.
   *
   * @param grade rise over run, a fraction
   */
  default void climbing(double grade) {}

  /**
   * Takes a piece of what this trip has driven, smoothed, so that it is known when it is driven
   * again; each goes on where the one before ended.
   */
  default void driven(RoadPass piece) {}

  /** Whether {@link #driven} is of any use to it. */
  default boolean learnsOnTheWay() {
    return false;
  }

  /**
   * The height of the road at a place, if an imported route tells one and the vehicle was on it a
   * moment ago. What was learned by driving is never told here.
   *
   * @return metres in the route's own datum
   */
  default OptionalDouble routeHeight(PositionFix fix) {
    return OptionalDouble.empty();
  }

  /** The road ahead from where the vehicle is now. */
  RoadAhead ahead();
}
