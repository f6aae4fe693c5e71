package steadypull.thermal;

import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/**
 * What this vehicle has shown about air flow and fuel at a given engine power and speed. Pipeline
 * thread only.
 */
final class LoadMaps {
  /** g/s: a diesel breathes about 1.3 g/s per kW under load (estimated, see the road package). */
  private final LinearMap airGramsPerSecond =
      new LinearMap(new double[] {0, 105, 20}, new double[] {8, 30, 8}, 8);

  /** kW of fuel heat: 0.42 of it at the margin reaches the crankshaft (common practice). */
  private final LinearMap fuelKilowatts =
      new LinearMap(new double[] {3, 238, 12}, new double[] {8, 30, 6}, 12);

  /**
   * By this under load, whichever of the two is measured: their ratio changes little from load to
   * load, where two straight lines drift apart.
   */
  private final AirFuelMap airFuel = new AirFuelMap();

  /** With less fuel an engine breathes what it turns. */
  private static final double LEAST_FUEL_KILOWATTS = 60;

  /** P in kW of torque in N.m and speed in r/min: 60000 / (2 pi). */
  private static final double NEWTON_METRE_RPM_PER_KILOWATT = 9549.297;

  /** An engine that turns slower hardly pulls. */
  private static final double LEAST_RPM = 500;

  /** So far from a load what the maps miss there is of no account any more (estimated). */
  private static final double MISS_KILOWATTS = 30;

  // An outlook asks some thousand times about ways from one load, mostly at one speed.
  private @Nullable Load missedFrom;
  private double missedAir;
  private double missedFuel;
  private double windSpeed = -1;
  private double windShare;

  /** Learns from what was measured at one moment that stands for the given seconds. */
  void learn(
      double kilowatts,
      double engineRpm,
      OptionalDouble airGrams,
      OptionalDouble fuel,
      double seconds) {
    missedFrom = null;
    fuel.ifPresent(value -> fuelKilowatts.learn(kilowatts, engineRpm, value, seconds));
    airGrams.ifPresent(
        value -> {
          airGramsPerSecond.learn(kilowatts, engineRpm, value, seconds);
          airFuel.learn(
              newtonMetres(kilowatts, engineRpm),
              value,
              fuel.orElse(fuelKilowatts(kilowatts, engineRpm)),
              seconds);
        });
  }

  /** Air flow at a power, kg/s. */
  double airKilogramsPerSecond(double kilowatts, double engineRpm) {
    double fuelled = fuelKilowatts(kilowatts, engineRpm);
    if (fuelled >= LEAST_FUEL_KILOWATTS) {
      return airFuel.at(newtonMetres(kilowatts, engineRpm)) * fuelled / 1000;
    }
    return Math.max(0, airGramsPerSecond.at(kilowatts, engineRpm)) / 1000;
  }

  private static double newtonMetres(double kilowatts, double engineRpm) {
    return kilowatts * NEWTON_METRE_RPM_PER_KILOWATT / Math.max(LEAST_RPM, engineRpm);
  }

  /** Fuel heat at a power, kW. */
  double fuelKilowatts(double kilowatts, double engineRpm) {
    return Math.max(0, fuelKilowatts.at(kilowatts, engineRpm));
  }

  /**
   * A load moved to another power, engine speed and road speed. What the maps miss at the old point
   * fades with the way from there, so that an unchanged load stays exactly as measured, and a
   * reading from the middle of a change spoils no other load.
   */
  Load moved(Load from, double kilowatts, double engineRpm, double metresPerSecond) {
    return moved(
        from,
        kilowatts,
        engineRpm,
        metresPerSecond,
        from.outsideCelsius(),
        from.outsideKilopascals());
  }

  /** The same in other air, degC and kPa. */
  Load moved(
      Load from,
      double kilowatts,
      double engineRpm,
      double metresPerSecond,
      double outsideCelsius,
      double outsideKilopascals) {
    miss(from);
    double kept = Math.exp(-Math.abs(kilowatts - from.kilowatts()) / MISS_KILOWATTS);
    double air = airKilogramsPerSecond(kilowatts, engineRpm) + kept * missedAir;
    double fuel = fuelKilowatts(kilowatts, engineRpm) + kept * missedFuel;
    double known = Math.max(0, fuel);
    double breathed = Math.max(0, air);
    boolean isSameSpeed =
        engineRpm == from.engineRpm()
            && metresPerSecond == from.metresPerSecond()
            && outsideCelsius == from.outsideCelsius()
            && outsideKilopascals == from.outsideKilopascals();
    return isSameSpeed
        ? from.at(kilowatts, known, breathed)
        : new Load(
            kilowatts,
            engineRpm,
            metresPerSecond,
            known,
            breathed,
            outsideCelsius,
            outsideKilopascals,
            wind(metresPerSecond));
  }

  /** Takes note of what the maps miss at a load, kg/s and kW. */
  private void miss(Load from) {
    if (missedFrom != from) {
      missedFrom = from;
      missedAir =
          from.airKilogramsPerSecond() - airKilogramsPerSecond(from.kilowatts(), from.engineRpm());
      missedFuel = from.fuelKilowatts() - fuelKilowatts(from.kilowatts(), from.engineRpm());
    }
  }

  private double wind(double metresPerSecond) {
    if (metresPerSecond != windSpeed) {
      windSpeed = metresPerSecond;
      windShare = Load.ramAir(metresPerSecond);
    }
    return windShare;
  }
}
