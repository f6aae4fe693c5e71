package steadypull.demo.bench;

import java.util.Objects;
import java.util.OptionalDouble;
import steadypull.demo.road.Scenario;

/**
 * What runs on the bench and how fast.
 *
 * @param scenario the drive
 * @param speed seconds of the drive per second of the day, 0.01 to 10000; empty never waits
 * @param seed of noise, gusts and answer times
 * @param startSeconds where in the drive the bench begins, 0 or more
 * @param vehicle what kind of vehicle
 * @param adapter what kind of adapter
 * @param faults what goes wrong
 */
record BenchSettings(
    Scenario scenario,
    OptionalDouble speed,
    long seed,
    double startSeconds,
    VehicleTraits vehicle,
    AdapterTraits adapter,
    FaultPlan faults) {
  BenchSettings {
    Objects.requireNonNull(scenario);
    Objects.requireNonNull(vehicle);
    Objects.requireNonNull(adapter);
    Objects.requireNonNull(faults);
    if (speed.isPresent() && !(speed.getAsDouble() >= 0.01 && speed.getAsDouble() <= 10_000)) {
      throw new IllegalArgumentException(
          "speed lies between 0.01 and 10000, found " + speed.getAsDouble());
    }
    if (!(startSeconds >= 0 && startSeconds < scenario.duration().toSeconds())) {
      throw new IllegalArgumentException(
          "start lies between 0 and %s s, found %s"
              .formatted(scenario.duration().toSeconds(), startSeconds));
    }
  }

  boolean has(Fault.Kind kind, double seconds) {
    return faults.has(kind, seconds);
  }

  /** How long the drive lasts from the bench's beginning, s. */
  double lasts() {
    return scenario.duration().toSeconds() - startSeconds;
  }
}
