package steadypull.thermal;

/**
 * What the engine and the road do to the stores at one moment. Immutable.
 *
 * @param kilowatts engine power at the crankshaft, 0 or more
 * @param engineRpm engine speed, r/min
 * @param metresPerSecond road speed, 0 or more
 * @param fuelKilowatts heat of the fuel burnt, 0 or more
 * @param airKilogramsPerSecond air through the engine, 0 or more
 * @param outsideCelsius outside air
 */
record Load(
    double kilowatts,
    double engineRpm,
    double metresPerSecond,
    double fuelKilowatts,
    double airKilogramsPerSecond,
    double outsideCelsius) {
  private static final double REFERENCE_SPEED = 25;

  /**
   * Air-side conductance of a finned core against air speed: exponent 0.5 to 0.7 (estimated from
   * Kays and London, Compact Heat Exchangers, where the Stanton number of finned surfaces falls
   * about as Re^-0.4).
   */
  private static final double CORE_SPEED_EXPONENT = 0.6;

  /** How much of the wind of 25 m/s blows through a core, as conductance: 1 at 25 m/s. */
  double ramAir() {
    return Math.pow(metresPerSecond / REFERENCE_SPEED, CORE_SPEED_EXPONENT);
  }
}
