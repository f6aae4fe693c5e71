package steadypull.road;

import java.util.Optional;
import java.util.OptionalDouble;
import steadypull.channel.Channels;

/**
 * What the engine puts out at the crankshaft. Immutable.
 *
 * @param kilowatts 0 or more: on overrun the torque channel reads zero, whatever the engine brakes
 * @param basis what it was told from; only torque is good enough for a torque balance
 */
public record EnginePower(double kilowatts, Basis basis) {
  /** Where an engine power comes from, best first. A closed set. */
  public enum Basis {
    TORQUE,
    FUEL,
    AIR_FLOW,
    ENGINE_LOAD
  }

  /** P in kW of torque in N.m and speed in r/min: 60000 / (2 pi). */
  private static final double NEWTON_METRE_RPM_PER_KILOWATT = 9549.297;

  /** Diesel of 42.8 MJ/kg and 835 kg/m3 (EN 590): 35.74 MJ/L, over 3600 s. */
  public static final double FUEL_KILOWATTS_PER_LITRE_PER_HOUR = 35.74 / 3.6;

  /**
   * Share of fuel power at the crankshaft under load, 0.38 to 0.42 (common practice, no source).
   */
  private static final double SHAFT_SHARE = 0.40;

  /**
   * A diesel under load breathes about 1.3 g/s per kW (estimated: air-fuel ratio 22, 215 g/kWh).
   */
  private static final double AIR_GRAMS_PER_SECOND_PER_KILOWATT = 1.3;

  /** What a tow engine may give when nothing better is known (common practice, no source). */
  private static final double USUAL_RATED_KILOWATTS = 220;

  /**
   * Delivered torque (parameter 62) is indicated torque, friction included (SAE J1939-71, SPN 513,
   * from memory). Where the friction torque is not told, 6 to 10 % of the reference torque is usual
   * (common practice, no source).
   */
  public static final double FRICTION_PERCENT = 8;

  private static final double FRESH_SECONDS = 5;

  /** The reference torque is a constant of the engine; it is asked for seldom. */
  private static final double REFERENCE_FRESH_SECONDS = 3600;

  /** Tells the power from the best fresh channels, or empty if there is none. */
  public static Optional<EnginePower> tell(LatestSamples samples, long timeMicros) {
    OptionalDouble net = netKilowatts(samples, timeMicros);
    if (net.isPresent()) {
      return of(net.getAsDouble(), Basis.TORQUE);
    }
    OptionalDouble fuel = samples.within(Channels.FUEL_RATE, timeMicros, FRESH_SECONDS);
    if (fuel.isPresent()) {
      return of(fuel.getAsDouble() * FUEL_KILOWATTS_PER_LITRE_PER_HOUR * SHAFT_SHARE, Basis.FUEL);
    }
    OptionalDouble air = samples.within(Channels.AIR_MASS_FLOW, timeMicros, FRESH_SECONDS);
    if (air.isPresent()) {
      return of(air.getAsDouble() / AIR_GRAMS_PER_SECOND_PER_KILOWATT, Basis.AIR_FLOW);
    }
    OptionalDouble load = samples.within(Channels.ENGINE_LOAD, timeMicros, FRESH_SECONDS);
    return load.isPresent()
        ? of(load.getAsDouble() / 100 * USUAL_RATED_KILOWATTS, Basis.ENGINE_LOAD)
        : Optional.empty();
  }

  /**
   * What the engine gives at the crankshaft by its torque, kW; negative while the vehicle drives
   * it. Empty where torque, speed or reference torque are not told.
   */
  public static OptionalDouble netKilowatts(LatestSamples samples, long timeMicros) {
    OptionalDouble percent = samples.within(Channels.DELIVERED_TORQUE, timeMicros, FRESH_SECONDS);
    OptionalDouble speed = samples.within(Channels.ENGINE_SPEED, timeMicros, FRESH_SECONDS);
    OptionalDouble reference =
        samples.within(Channels.REFERENCE_TORQUE, timeMicros, REFERENCE_FRESH_SECONDS);
    if (percent.isEmpty() || speed.isEmpty() || reference.isEmpty()) {
      return OptionalDouble.empty();
    }
    double newtonMetres =
        (percent.getAsDouble() - FRICTION_PERCENT) / 100 * reference.getAsDouble();
    return OptionalDouble.of(newtonMetres * speed.getAsDouble() / NEWTON_METRE_RPM_PER_KILOWATT);
  }

  private static Optional<EnginePower> of(double kilowatts, Basis basis) {
    return Optional.of(new EnginePower(Math.max(0, kilowatts), basis));
  }
}
