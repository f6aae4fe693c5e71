package steadypull.thermal;

import java.util.Optional;
import java.util.OptionalDouble;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.road.EnginePower;
import steadypull.road.LatestSamples;
import steadypull.road.StandardAtmosphere;

/**
 * Makes a {@link Load} out of the channels that a vehicle has; what it lacks comes from the learnt
 * maps or from a usual value. Pipeline thread only.
 */
final class LoadSensing {
  private static final double FRESH_SECONDS = 5;

  /** Outside air changes slowly; past a minute it is still better than a guess, so it is held. */
  private static final double WEATHER_FRESH_SECONDS = 60;

  private static final double HELD_SECONDS = 900;
  private static final double KILOMETRES_PER_HOUR = 3.6;
  private static final double GRAMS_PER_KILOGRAM = 1000;

  /** Intake air under the bonnet over outside air (common practice 10 to 35 K under load). */
  private static final double INTAKE_ABOVE_OUTSIDE = 10;

  private static final double USUAL_OUTSIDE_CELSIUS = 25;
  private static final double USUAL_ENGINE_RPM = 1800;

  /** About 65 km/h, a loaded rig on a grade; for vehicles that tell no speed. */
  private static final double USUAL_METRES_PER_SECOND = 18;

  private final LoadMaps maps;

  LoadSensing(LoadMaps maps) {
    this.maps = maps;
  }

  /**
   * The load now, or empty if nothing tells the engine's power.
   *
   * @param seconds how long this moment stands for, for the maps to learn from
   */
  Optional<Load> sense(LatestSamples samples, long timeMicros, double seconds) {
    Optional<EnginePower> power = EnginePower.tell(samples, timeMicros);
    if (power.isEmpty()) {
      return Optional.empty();
    }
    double kilowatts = power.get().kilowatts();
    double rpm = fresh(samples, Channels.ENGINE_SPEED, timeMicros).orElse(USUAL_ENGINE_RPM);
    OptionalDouble air = fresh(samples, Channels.AIR_MASS_FLOW, timeMicros);
    OptionalDouble fuel = fuelKilowatts(samples, timeMicros);
    maps.learn(kilowatts, rpm, air, fuel, seconds);
    return Optional.of(
        new Load(
            kilowatts,
            rpm,
            metresPerSecond(samples, timeMicros),
            fuel.orElse(maps.fuelKilowatts(kilowatts, rpm)),
            Math.max(
                0,
                air.isPresent()
                    ? air.getAsDouble() / GRAMS_PER_KILOGRAM
                    : maps.airKilogramsPerSecond(kilowatts, rpm)),
            outsideCelsius(samples, timeMicros),
            samples
                .within(Channels.BAROMETRIC_PRESSURE, timeMicros, HELD_SECONDS)
                .orElse(StandardAtmosphere.SEA_LEVEL_KILOPASCALS)));
  }

  /** Age of the youngest channel that can tell the power, seconds; 0 if none was ever heard. */
  double secondsSincePower(LatestSamples samples, long timeMicros) {
    double youngest = Double.POSITIVE_INFINITY;
    for (Channel channel : POWER_CHANNELS) {
      youngest = Math.min(youngest, samples.secondsSince(channel, timeMicros).orElse(youngest));
    }
    return Double.isInfinite(youngest) ? 0 : youngest;
  }

  private static final Channel[] POWER_CHANNELS = {
    Channels.DELIVERED_TORQUE, Channels.FUEL_RATE, Channels.AIR_MASS_FLOW, Channels.ENGINE_LOAD
  };

  private static OptionalDouble fuelKilowatts(LatestSamples samples, long timeMicros) {
    OptionalDouble litresPerHour = fresh(samples, Channels.FUEL_RATE, timeMicros);
    return litresPerHour.isEmpty()
        ? OptionalDouble.empty()
        : OptionalDouble.of(
            litresPerHour.getAsDouble() * EnginePower.FUEL_KILOWATTS_PER_LITRE_PER_HOUR);
  }

  private static double metresPerSecond(LatestSamples samples, long timeMicros) {
    OptionalDouble speed = samples.within(Channels.VEHICLE_SPEED, timeMicros, 2 * FRESH_SECONDS);
    return speed.isPresent()
        ? Math.max(0, speed.getAsDouble()) / KILOMETRES_PER_HOUR
        : USUAL_METRES_PER_SECOND;
  }

  static double outsideCelsius(LatestSamples samples, long timeMicros) {
    OptionalDouble outside =
        samples.within(Channels.AMBIENT_AIR_TEMP, timeMicros, WEATHER_FRESH_SECONDS);
    if (outside.isPresent()) {
      return outside.getAsDouble();
    }
    OptionalDouble held = samples.within(Channels.AMBIENT_AIR_TEMP, timeMicros, HELD_SECONDS);
    OptionalDouble intake =
        samples.within(Channels.INTAKE_AIR_TEMP, timeMicros, WEATHER_FRESH_SECONDS);
    if (held.isEmpty() && intake.isPresent()) {
      return intake.getAsDouble() - INTAKE_ABOVE_OUTSIDE;
    }
    return held.orElse(USUAL_OUTSIDE_CELSIUS);
  }

  private static OptionalDouble fresh(LatestSamples samples, Channel channel, long timeMicros) {
    return samples.within(channel, timeMicros, FRESH_SECONDS);
  }
}
