package steadypull.demo.plant;

/**
 * What is around the vehicle at one moment.
 *
 * @param gradeShare rise over run, -0.3 to 0.3; uphill positive
 * @param airCelsius outside air, -50 to 60
 * @param pressureKilopascals outside air, absolute, 40 to 110
 * @param headwindMetresPerSecond against the vehicle positive, -40 to 40
 */
public record Surroundings(
    double gradeShare,
    double airCelsius,
    double pressureKilopascals,
    double headwindMetresPerSecond) {
  private static final double GAS_CONSTANT_AIR = 287.05287; // ISO 2533:1975, J/(kg K)

  public Surroundings {
    requireBetween("grade", gradeShare, -0.3, 0.3);
    requireBetween("outside air", airCelsius, -50, 60);
    requireBetween("outside pressure", pressureKilopascals, 40, 110);
    requireBetween("headwind", headwindMetresPerSecond, -40, 40);
  }

  /** Density of the outside air, dry, kg/m3. */
  double airDensity() {
    return pressureKilopascals * 1000 / (GAS_CONSTANT_AIR * (airCelsius + 273.15));
  }

  private static void requireBetween(String what, double value, double lowest, double highest) {
    if (!(value >= lowest && value <= highest)) {
      throw new IllegalArgumentException(
          "%s lies between %s and %s, found %s".formatted(what, lowest, highest, value));
    }
  }
}
