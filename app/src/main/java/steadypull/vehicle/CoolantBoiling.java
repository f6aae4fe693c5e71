package steadypull.vehicle;

/**
 * Where engine coolant boils: 50/50 ethylene glycol and water by volume. Pure functions, any
 * thread.
 *
 * <p>Its vapour pressure is 0.777 of that of water at the same temperature: so scaled it boils at
 * 107.2 degC at 101.325 kPa, where sources have 106 to 108 degC. Against published figures for caps
 * it errs by up to 2 K (estimated).
 */
public final class CoolantBoiling {
  /** Vapour pressure of the mixture against that of water (scaled, see above). */
  private static final double VAPOUR_SHARE = 0.777;

  private static final double KILOPASCALS_PER_MEGAPASCAL = 1000;
  private static final double ZERO_CELSIUS_KELVIN = 273.15;

  /** IAPWS-IF97, region 4, table 34; the first is unused, so that numbers are those printed. */
  private static final double[] N = {
    0,
    0.11670521452767e4,
    -0.72421316703206e6,
    -0.17073846940092e2,
    0.12020824702470e5,
    -0.32325550322333e7,
    0.14915108613530e2,
    -0.48232657361591e4,
    0.40511340542057e6,
    -0.23855557567849,
    0.65017534844798e3
  };

  private CoolantBoiling() {}

  /**
   * Boiling point, degC.
   *
   * @param kilopascals absolute pressure on the coolant, 20 to 1000
   */
  public static double celsius(double kilopascals) {
    return waterCelsius(kilopascals / VAPOUR_SHARE);
  }

  /**
   * Boiling point of water: the backward equation of the Revised Release on the IAPWS Industrial
   * Formulation 1997, equation 31.
   */
  static double waterCelsius(double kilopascals) {
    double beta = Math.pow(kilopascals / KILOPASCALS_PER_MEGAPASCAL, 0.25);
    double e = beta * beta + N[3] * beta + N[6];
    double f = N[1] * beta * beta + N[4] * beta + N[7];
    double g = N[2] * beta * beta + N[5] * beta + N[8];
    double d = 2 * g / (-f - Math.sqrt(f * f - 4 * e * g));
    double sum = N[10] + d;
    return (sum - Math.sqrt(sum * sum - 4 * (N[9] + N[10] * d))) / 2 - ZERO_CELSIUS_KELVIN;
  }
}
