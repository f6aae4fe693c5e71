package steadypull.vehicle.role;

import java.util.HashSet;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * Finds the first moments after hours of rest, when everything is as warm as the air around: then a
 * sensor that reads something else is not to be believed. Only the first half minute of a drive can
 * be such a moment.
 */
final class RestCheck {
  private static final long WINDOW_MICROS = 30_000_000;

  /** Coolant this near to outside air has had hours to get there (estimated). */
  private static final double RESTED_KELVIN = 4;

  private final Set<String> checked = new HashSet<>();
  private long firstMicros = Long.MIN_VALUE;
  private boolean isOver;

  void look(long now, boolean isRunning, OptionalDouble outside, Map<String, Watched> sensors) {
    if (firstMicros == Long.MIN_VALUE) {
      firstMicros = now;
    }
    isOver |= now - firstMicros > WINDOW_MICROS;
    OptionalDouble water = engineWater(now, sensors);
    if (isOver || outside.isEmpty() || water.isEmpty()) {
      return;
    }
    if (Math.abs(water.getAsDouble() - outside.getAsDouble()) > RESTED_KELVIN) {
      isOver = true;
      return;
    }
    sensors.forEach((key, sensor) -> check(key, sensor, now, isRunning, outside.getAsDouble()));
  }

  /** A running engine heats its exhaust at once, and everything else later. */
  private void check(
      String key, Watched sensor, long now, boolean isRunning, double outsideCelsius) {
    boolean isSlowToHeat = Medium.of(key).filter(medium -> medium != Medium.EXHAUST).isPresent();
    OptionalDouble reading = sensor.reading(now);
    if (reading.isPresent() && (isSlowToHeat || !isRunning) && checked.add(key)) {
      sensor.rested(reading.getAsDouble(), outsideCelsius);
    }
  }

  /** The engine's own parameter, else the hottest water: a charge circuit tells nothing of it. */
  private static OptionalDouble engineWater(long now, Map<String, Watched> sensors) {
    Watched own = sensors.get(WaterCompare.ENGINE_COOLANT);
    if (own != null) {
      return own.reading(now);
    }
    return sensors.entrySet().stream()
        .filter(each -> Medium.of(each.getKey()).equals(Optional.of(Medium.WATER)))
        .flatMapToDouble(each -> each.getValue().reading(now).stream())
        .max();
  }
}
