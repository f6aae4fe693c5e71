package steadypull.road;

/**
 * Air by height: the standard atmosphere up to 11 km (ISO 2533:1975, Standard Atmosphere; constants
 * as reprinted in ICAO Doc 7488). Pure functions, any thread.
 */
public final class StandardAtmosphere {
  /** Standard acceleration of free fall, m/s2 (ISO 2533:1975, 2.1). */
  public static final double GRAVITY = 9.80665;

  /** 0 degC in kelvin. */
  public static final double ZERO_CELSIUS_KELVIN = 273.15;

  /** Sea-level pressure, kPa (ISO 2533:1975, table 1). */
  public static final double SEA_LEVEL_KILOPASCALS = 101.325;

  private static final double SEA_LEVEL_KELVIN = 288.15;
  private static final double LAPSE_KELVIN_PER_METRE = 0.0065;

  /** Specific gas constant of dry air, J/(kg K) (ISO 2533:1975, 2.1). */
  private static final double GAS_CONSTANT = 287.05287;

  /** g0 / (R * lapse rate). */
  private static final double EXPONENT = GRAVITY / (GAS_CONSTANT * LAPSE_KELVIN_PER_METRE);

  /** Nominal radius of the earth, m (ISO 2533:1975, 2.3). */
  private static final double EARTH_RADIUS_METRES = 6_356_766;

  private StandardAtmosphere() {}

  /** Geopotential height of a geometric height, both in metres. */
  public static double geopotentialMetres(double geometricMetres) {
    return EARTH_RADIUS_METRES * geometricMetres / (EARTH_RADIUS_METRES + geometricMetres);
  }

  /** Temperature in kelvin at a geopotential height in metres, -2000 to 11000. */
  public static double kelvin(double geopotentialMetres) {
    return SEA_LEVEL_KELVIN - LAPSE_KELVIN_PER_METRE * geopotentialMetres;
  }

  /** Pressure in kPa at a geopotential height in metres, -2000 to 11000. */
  public static double kilopascals(double geopotentialMetres) {
    double ratio = kelvin(geopotentialMetres) / SEA_LEVEL_KELVIN;
    return SEA_LEVEL_KILOPASCALS * Math.pow(ratio, EXPONENT);
  }

  /** Geopotential height in metres at which the standard pressure is the one given, in kPa. */
  public static double pressureAltitudeMetres(double kilopascals) {
    double ratio = Math.pow(kilopascals / SEA_LEVEL_KILOPASCALS, 1 / EXPONENT);
    return SEA_LEVEL_KELVIN / LAPSE_KELVIN_PER_METRE * (1 - ratio);
  }

  /** Density of dry air in kg/m3 from its pressure in kPa and its temperature in degC. */
  public static double density(double kilopascals, double celsius) {
    return kilopascals * 1000 / (GAS_CONSTANT * (celsius + ZERO_CELSIUS_KELVIN));
  }
}
