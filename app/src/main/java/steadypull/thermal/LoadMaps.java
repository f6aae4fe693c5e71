package steadypull.thermal;

import java.util.OptionalDouble;

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

  /** Learns from what was measured at one moment that stands for the given seconds. */
  void learn(
      double kilowatts,
      double engineRpm,
      OptionalDouble airGrams,
      OptionalDouble fuel,
      double seconds) {
    airGrams.ifPresent(value -> airGramsPerSecond.learn(kilowatts, engineRpm, value, seconds));
    fuel.ifPresent(value -> fuelKilowatts.learn(kilowatts, engineRpm, value, seconds));
  }

  /** Air flow at a power, kg/s. */
  double airKilogramsPerSecond(double kilowatts, double engineRpm) {
    return Math.max(0, airGramsPerSecond.at(kilowatts, engineRpm)) / 1000;
  }

  /** Fuel heat at a power, kW. */
  double fuelKilowatts(double kilowatts, double engineRpm) {
    return Math.max(0, fuelKilowatts.at(kilowatts, engineRpm));
  }

  /**
   * A load moved to another power, engine speed and road speed; what the maps miss at the old point
   * is kept, so that an unchanged load stays exactly as measured.
   */
  Load moved(Load from, double kilowatts, double engineRpm, double metresPerSecond) {
    double air =
        from.airKilogramsPerSecond()
            + airKilogramsPerSecond(kilowatts, engineRpm)
            - airKilogramsPerSecond(from.kilowatts(), from.engineRpm());
    double fuel =
        from.fuelKilowatts()
            + fuelKilowatts(kilowatts, engineRpm)
            - fuelKilowatts(from.kilowatts(), from.engineRpm());
    double known = Math.max(0, fuel);
    double breathed = Math.max(0, air);
    boolean isSameSpeed =
        engineRpm == from.engineRpm() && metresPerSecond == from.metresPerSecond();
    return isSameSpeed
        ? from.at(kilowatts, known, breathed)
        : new Load(kilowatts, engineRpm, metresPerSecond, known, breathed, from.outsideCelsius());
  }
}
