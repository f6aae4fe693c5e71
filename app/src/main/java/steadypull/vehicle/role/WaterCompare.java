package steadypull.vehicle.role;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Sets the sensors of parameter 67 against the engine's water, or against each other. */
final class WaterCompare {
  static final String ENGINE_COOLANT = "01.05";
  static final List<String> PAIR = List.of("01.67.1", "01.67.2");

  /** An engine this warm has its thermostat at work, or nearly (common practice, no source). */
  static final double WARM_CELSIUS = 70;

  private WaterCompare() {}

  static void look(long now, Map<String, Watched> sensors) {
    for (int own = 0; own < PAIR.size(); own++) {
      OptionalDouble reading = reading(PAIR.get(own), now, sensors);
      OptionalDouble engine = reading(ENGINE_COOLANT, now, sensors);
      OptionalDouble other = engine.isPresent() ? engine : reading(PAIR.get(1 - own), now, sensors);
      if (reading.isPresent() && other.isPresent()) {
        compare(PAIR.get(own), reading.getAsDouble(), other.getAsDouble(), sensors);
      }
    }
  }

  private static void compare(
      String key, double reading, double other, Map<String, Watched> sensors) {
    if (Math.max(reading, other) >= WARM_CELSIUS) {
      Optional.ofNullable(sensors.get(key))
          .ifPresent(sensor -> sensor.apart(Math.abs(reading - other)));
    }
  }

  private static OptionalDouble reading(String key, long now, Map<String, Watched> sensors) {
    Watched sensor = sensors.get(key);
    return sensor == null ? OptionalDouble.empty() : sensor.reading(now);
  }
}
