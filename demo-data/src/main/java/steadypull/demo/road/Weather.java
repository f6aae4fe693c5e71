package steadypull.demo.road;

/**
 * The air of a day.
 *
 * @param celsiusAtStart outside air at the road's start, -40 to 55
 * @param headwindMetresPerSecond mean headwind, -25 to 25
 * @param gustMetresPerSecond standard deviation of gusts, 0 to 10
 */
public record Weather(
    double celsiusAtStart, double headwindMetresPerSecond, double gustMetresPerSecond) {
  // ISO 2533:1975: lapse rate K/m, sea-level pressure kPa and temperature K, exponent
  private static final double LAPSE = 0.0065;
  private static final double SEA_LEVEL_KILOPASCALS = 101.325;
  private static final double SEA_LEVEL_KELVIN = 288.15;
  private static final double EXPONENT = 5.25588;

  public Weather {
    if (!(celsiusAtStart >= -40 && celsiusAtStart <= 55)) {
      throw new IllegalArgumentException(
          "Outside air lies between -40 and 55 degC, found " + celsiusAtStart);
    }
    if (!(Math.abs(headwindMetresPerSecond) <= 25
        && gustMetresPerSecond >= 0
        && gustMetresPerSecond <= 10)) {
      throw new IllegalArgumentException(
          "Wind is at most 25 m/s with gusts of 0 to 10 m/s, found %s and %s"
              .formatted(headwindMetresPerSecond, gustMetresPerSecond));
    }
  }

  /** Outside air at a height above the start, degC. */
  public double celsius(double metresAboveStart) {
    return celsiusAtStart - LAPSE * metresAboveStart;
  }

  /** Pressure at an altitude, kPa. */
  public static double kilopascals(double altitude) {
    return SEA_LEVEL_KILOPASCALS * Math.pow(1 - LAPSE * altitude / SEA_LEVEL_KELVIN, EXPONENT);
  }
}
