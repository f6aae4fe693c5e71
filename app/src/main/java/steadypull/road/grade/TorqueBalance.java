package steadypull.road.grade;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.OptionalDouble;
import steadypull.road.RoadLoad;

/**
 * The grade that the present load amounts to: what the wheels get, less what drag, rolling and
 * acceleration take, lifts the rig. Pipeline thread only.
 *
 * <p>The balance is one of energy over the last seconds, so that the speed in whole km/h is never
 * differentiated. While the engine does not pull, the brakes may: then the grade cannot be told.
 */
final class TorqueBalance {
  /** Long enough for 1 km/h steps to cost less than 1 % of grade at 60 km/h, short for a road. */
  static final double WINDOW_SECONDS = 8;

  private static final double SHORTEST_SECONDS = 4;

  /** Longer steps are gaps: what happened in them is unknown. */
  private static final double LONGEST_STEP_SECONDS = 3;

  private static final double LOWEST_METRES_PER_SECOND = 4;

  /** Under this engine power the brakes may be on or the engine may brake. */
  private static final double LEAST_PULL_KILOWATTS = 8;

  private record Step(
      double endSeconds,
      double seconds,
      double wheelJoules,
      double dragJoules,
      double metres,
      double startSpeed,
      double endSpeed) {}

  private final Deque<Step> steps = new ArrayDeque<>();
  private double lastSeconds = Double.NEGATIVE_INFINITY;
  private double lastSpeed;

  /**
   * Takes the state of one moment; moments come in order.
   *
   * @param seconds time
   * @param load the rig's road load in the present air
   * @param engineKilowatts at the crankshaft
   * @param wheelKilowatts at the wheels
   * @param metresPerSecond road speed
   */
  void accept(
      double seconds,
      RoadLoad load,
      double engineKilowatts,
      double wheelKilowatts,
      double metresPerSecond) {
    double step = seconds - lastSeconds;
    if (!(step <= LONGEST_STEP_SECONDS)
        || engineKilowatts < LEAST_PULL_KILOWATTS
        || metresPerSecond < LOWEST_METRES_PER_SECOND) {
      steps.clear();
    } else if (step > 0) {
      double speed = (lastSpeed + metresPerSecond) / 2;
      steps.addLast(
          new Step(
              seconds,
              step,
              wheelKilowatts * 1000 * step,
              load.dragNewtons(speed) * speed * step,
              speed * step,
              lastSpeed,
              metresPerSecond));
      while (steps.getFirst().endSeconds() <= seconds - WINDOW_SECONDS) {
        steps.removeFirst();
      }
    }
    lastSeconds = seconds;
    lastSpeed = metresPerSecond;
  }

  /** Says that the balance broke off: an input is missing. */
  void interrupt() {
    steps.clear();
    lastSeconds = Double.NEGATIVE_INFINITY;
  }

  /** The mean grade of the last seconds as a fraction, or empty if it cannot be told. */
  OptionalDouble grade(RoadLoad load) {
    double seconds = steps.stream().mapToDouble(Step::seconds).sum();
    if (seconds < SHORTEST_SECONDS) {
      return OptionalDouble.empty();
    }
    double wheel = steps.stream().mapToDouble(Step::wheelJoules).sum();
    double drag = steps.stream().mapToDouble(Step::dragJoules).sum();
    double metres = steps.stream().mapToDouble(Step::metres).sum();
    double startSpeed = steps.getFirst().startSpeed();
    double endSpeed = steps.getLast().endSpeed();
    double kinetic = load.inertialKilograms() / 2 * (endSpeed * endSpeed - startSpeed * startSpeed);
    return load.gradeUnder((wheel - drag - kinetic) / metres);
  }
}
