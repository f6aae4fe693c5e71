package steadypull.thermal;

import java.util.List;

/**
 * Charge air before its cooler: what the compressor makes of the air outside, seen through a short
 * lag of housing, pipe and sensor.
 *
 * <p>An engine swallows its displacement every second turn, so that air flow, engine speed and
 * charge temperature tell the pressure in the manifold, p = m R T / (V n / 2); and a compressor
 * heats by T1 (r^((k-1)/k) - 1) / eta with k = 1.4 (Heywood, Internal Combustion Engine
 * Fundamentals, chapter 6). So the same power in a lower gear is cooler, and hotter charge or
 * thinner air is hotter.
 */
record CompressorOutlet() implements HeatBalance {
  private static final double EXPONENT = 0.4 / 1.4;

  /** Dry air, J/(kg K) (ISO 2533:1975). */
  private static final double GAS_CONSTANT = 287.05287;

  private static final double KELVIN = 273.15;

  /** An engine that hardly turns tells no pressure. */
  private static final double LEAST_RPM = 500;

  /** No single stage of a road vehicle gives more (common practice, no source). */
  private static final double HIGHEST_RATIO = 4.5;

  /**
   * Litres swallowed in two turns, displacement times filling; efficiency of the compressor, 0.62
   * to 0.78 (common practice); kelvin that its inlet is warmer than outside air; lag in seconds:
   * metal of housing and pipe, and the probe (common practice 5 to 25 s).
   */
  @Override
  public List<Parameter> parameters() {
    return List.of(
        Parameter.positive(4.0, 0.35),
        Parameter.positive(0.7, 0.1),
        Parameter.free(8, 6),
        Parameter.positive(12, 0.4));
  }

  @Override
  public double kelvinPerSecond(double celsius, double[] p, Load load, double[] around) {
    double charge = around[Store.CHARGE_AIR.index()] + KELVIN;
    double inlet = load.outsideCelsius() + p[2] + KELVIN;
    double heats = inlet * (Math.pow(ratio(p[0], load, charge), EXPONENT) - 1) / p[1];
    return (inlet - KELVIN + heats - celsius) / p[3];
  }

  /** Pressure in the manifold against that outside, 1 or more. */
  private static double ratio(double litres, Load load, double chargeKelvin) {
    double cyclesPerSecond =
        Math.max(LEAST_RPM, load.engineRpm()) * load.cores().swallowedShare() / 120;
    double pascals =
        load.airKilogramsPerSecond()
            * GAS_CONSTANT
            * chargeKelvin
            / (litres / 1000 * cyclesPerSecond);
    return Math.clamp(pascals / (load.outsideKilopascals() * 1000), 1.0, HIGHEST_RATIO);
  }

  @Override
  public double returnPerSecond(
      double celsius, double rate, double[] p, Load load, double[] around) {
    return 1 / p[3];
  }

  @Override
  public double disturbance() {
    return 0.25;
  }

  @Override
  public double wander() {
    return 0.4;
  }

  @Override
  public double probableStart(double outsideCelsius) {
    return outsideCelsius + 10;
  }
}
