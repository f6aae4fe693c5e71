package steadypull.thermal;

/**
 * What a load is without the air conditioning: less fuel, and air in the same mixture, by what its
 * compressor takes, and cooler air before the radiators by what its condenser gives. The gearbox
 * passes on what it did.
 *
 * @param maps fuel that goes with a power
 */
record AirConditioning(LoadMaps maps) {
  /** Least, usual and most that the compressor takes, kW (common practice, no source). */
  private static final double LEAST = 2;

  private static final double USUAL = 3.5;
  private static final double MOST = 5;
  private static final double SPREAD = 0.9;

  /**
   * Heat that the condenser gives for each kW of the compressor: that and the heat of the cabin,
   * 1.5 of it on a hot day (common practice, no source).
   */
  private static final double CONDENSER_SHARE = 2.5;

  /**
   * Heat that warms the air through a radiator by 1 K, kW: 0.4 m2 of core at 25 m/s of road pass
   * some 2.5 m3/s, a fan alone 1 (estimated); air of 1.2 kg/m3 and 1.006 kJ/(kg K).
   */
  private static final double STANDING_KILOWATTS_PER_KELVIN = 1.2;

  private static final double WIND_KILOWATTS_PER_KELVIN = 1.8;
  private static final double REFERENCE_SPEED = 25;

  /**
   * A load as if it were off.
   *
   * @param load with it on
   * @param normal standard normal number for how much it takes; 0 is usual
   */
  Load off(Load load, double normal) {
    double taken = Math.min(load.kilowatts(), Math.clamp(USUAL + SPREAD * normal, LEAST, MOST));
    double burnt =
        maps.fuelKilowatts(load.kilowatts(), load.engineRpm())
            - maps.fuelKilowatts(load.kilowatts() - taken, load.engineRpm());
    double kept = 1 - Math.clamp(burnt / Math.max(1, load.fuelKilowatts()), 0.0, 1.0);
    return load.at(
            load.kilowatts(), kept * load.fuelKilowatts(), kept * load.airKilogramsPerSecond())
        .with(CoreChange.cooler(CONDENSER_SHARE * taken / kilowattsPerKelvin(load)));
  }

  private static double kilowattsPerKelvin(Load load) {
    return STANDING_KILOWATTS_PER_KELVIN
        + WIND_KILOWATTS_PER_KELVIN * load.metresPerSecond() / REFERENCE_SPEED;
  }
}
