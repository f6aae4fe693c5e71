package steadypull.thermal;

import steadypull.road.StandardAtmosphere;

/**
 * What the engine and the road do to the stores at one moment. Immutable; the two powers that every
 * store would otherwise raise again are raised once.
 */
final class Load {
  private static final double REFERENCE_SPEED = 25;
  private static final double REFERENCE_AIR_FLOW = 0.2;

  /** A trickle of air counts as this much, kg/s, so that no core becomes perfect. */
  private static final double LEAST_AIR_FLOW = 0.01;

  /**
   * Air-side conductance of a finned core against air speed: exponent 0.5 to 0.7 (estimated from
   * Kays and London, Compact Heat Exchangers, where the Stanton number of finned surfaces falls
   * about as Re^-0.4).
   */
  private static final double CORE_SPEED_EXPONENT = 0.6;

  /**
   * The same conductance against the density of the air: the speed sets the volume that passes, the
   * density its mass, and fins answer to mass as above. 0.7 takes 6.5 % away per 1000 m of the
   * standard atmosphere; common practice, no source, is 5 to 8 %.
   */
  private static final double CORE_DENSITY_EXPONENT = 0.7;

  /** Air at 20 degC and sea level, kg/m3. */
  private static final double REFERENCE_DENSITY = 1.204;

  /** Dry air, J/(kg K) (ISO 2533:1975). */
  private static final double GAS_CONSTANT = 287.05287;

  private final double kilowatts;
  private final double engineRpm;
  private final double metresPerSecond;
  private final double fuelKilowatts;
  private final double airKilogramsPerSecond;
  private final double outsideCelsius;
  private final double outsideKilopascals;
  private final double ramAir;
  private final double densityShare;
  private final double airFlowLogarithm;
  private final CoreChange cores;

  /**
   * A load.
   *
   * @param kilowatts engine power at the crankshaft, 0 or more
   * @param engineRpm engine speed, r/min
   * @param metresPerSecond road speed, 0 or more
   * @param fuelKilowatts heat of the fuel burnt, 0 or more
   * @param airKilogramsPerSecond air through the engine, 0 or more
   * @param outsideCelsius outside air
   * @param outsideKilopascals its pressure, absolute
   */
  Load(
      double kilowatts,
      double engineRpm,
      double metresPerSecond,
      double fuelKilowatts,
      double airKilogramsPerSecond,
      double outsideCelsius,
      double outsideKilopascals) {
    this(
        kilowatts,
        engineRpm,
        metresPerSecond,
        fuelKilowatts,
        airKilogramsPerSecond,
        outsideCelsius,
        outsideKilopascals,
        ramAir(metresPerSecond));
  }

  /** The same where {@link #ramAir(double)} of the speed is known already. */
  Load(
      double kilowatts,
      double engineRpm,
      double metresPerSecond,
      double fuelKilowatts,
      double airKilogramsPerSecond,
      double outsideCelsius,
      double outsideKilopascals,
      double ramAir) {
    this(
        kilowatts,
        engineRpm,
        metresPerSecond,
        fuelKilowatts,
        airKilogramsPerSecond,
        outsideCelsius,
        outsideKilopascals,
        ramAir,
        Math.pow(
            density(outsideCelsius, outsideKilopascals) / REFERENCE_DENSITY, CORE_DENSITY_EXPONENT),
        CoreChange.NONE);
  }

  /** Conductance of a core in the wind of a road speed in m/s, against that at 25 m/s. */
  static double ramAir(double metresPerSecond) {
    return Math.pow(metresPerSecond / REFERENCE_SPEED, CORE_SPEED_EXPONENT);
  }

  private static double density(double celsius, double kilopascals) {
    return 1000 * kilopascals / (GAS_CONSTANT * (celsius + 273.15));
  }

  /** A load at sea level. */
  Load(
      double kilowatts,
      double engineRpm,
      double metresPerSecond,
      double fuelKilowatts,
      double airKilogramsPerSecond,
      double outsideCelsius) {
    this(
        kilowatts,
        engineRpm,
        metresPerSecond,
        fuelKilowatts,
        airKilogramsPerSecond,
        outsideCelsius,
        StandardAtmosphere.SEA_LEVEL_KILOPASCALS);
  }

  private Load(
      double kilowatts,
      double engineRpm,
      double metresPerSecond,
      double fuelKilowatts,
      double airKilogramsPerSecond,
      double outsideCelsius,
      double outsideKilopascals,
      double ramAir,
      double densityShare,
      CoreChange cores) {
    this.kilowatts = kilowatts;
    this.engineRpm = engineRpm;
    this.metresPerSecond = metresPerSecond;
    this.fuelKilowatts = fuelKilowatts;
    this.airKilogramsPerSecond = airKilogramsPerSecond;
    this.outsideCelsius = outsideCelsius;
    this.outsideKilopascals = outsideKilopascals;
    this.ramAir = ramAir;
    this.densityShare = densityShare;
    this.cores = cores;
    double flow = Math.max(LEAST_AIR_FLOW, airKilogramsPerSecond) / REFERENCE_AIR_FLOW;
    this.airFlowLogarithm = Math.log(flow);
  }

  /** The same speeds at another power, with the fuel and air that go with it. */
  Load at(double otherKilowatts, double otherFuelKilowatts, double otherAirKilogramsPerSecond) {
    return new Load(
        otherKilowatts,
        engineRpm,
        metresPerSecond,
        otherFuelKilowatts,
        otherAirKilogramsPerSecond,
        outsideCelsius,
        outsideKilopascals,
        ramAir,
        densityShare,
        cores);
  }

  /** The same, but for what cores and compressor see of it. */
  Load with(CoreChange change) {
    return new Load(
        kilowatts,
        engineRpm,
        metresPerSecond,
        fuelKilowatts,
        airKilogramsPerSecond,
        outsideCelsius,
        outsideKilopascals,
        ramAir,
        densityShare,
        change);
  }

  /** Engine power at the crankshaft, kW. */
  double kilowatts() {
    return kilowatts;
  }

  /** Engine speed, r/min. */
  double engineRpm() {
    return engineRpm;
  }

  /** Road speed, m/s. */
  double metresPerSecond() {
    return metresPerSecond;
  }

  /** Heat of the fuel burnt, kW. */
  double fuelKilowatts() {
    return fuelKilowatts;
  }

  /** Air through the engine, kg/s. */
  double airKilogramsPerSecond() {
    return airKilogramsPerSecond;
  }

  /** Outside air, degC. */
  double outsideCelsius() {
    return outsideCelsius;
  }

  /** Pressure of outside air, kPa absolute. */
  double outsideKilopascals() {
    return outsideKilopascals;
  }

  /** Conductance of a core in the wind of the road, against that at 25 m/s: 0 at rest. */
  double ramAir() {
    return ramAir;
  }

  /** Conductance of a core in this outside air, against that in air of 20 degC at sea level. */
  double densityShare() {
    return densityShare;
  }

  /** What differs for cores and compressor from what was learnt. */
  CoreChange cores() {
    return cores;
  }

  /** Natural logarithm of the air flow against 0.2 kg/s. */
  double airFlowLogarithm() {
    return airFlowLogarithm;
  }
}
