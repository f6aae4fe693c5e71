package steadypull.demo.plant;

/**
 * How warm the vehicle is when a drive begins, all in degC, -50 to 150.
 *
 * @param chargeCoolant of the charge cooler's circuit, or of the charge cooler itself
 * @param engineCoolant of the engine
 * @param engineOil of the engine
 * @param gearboxFluid of the gearbox
 * @param metresPerSecond road speed, 0 to 50
 */
public record WarmStart(
    double chargeCoolant,
    double engineCoolant,
    double engineOil,
    double gearboxFluid,
    double metresPerSecond) {
  public WarmStart {
    for (double celsius : new double[] {chargeCoolant, engineCoolant, engineOil, gearboxFluid}) {
      if (!(celsius >= -50 && celsius <= 150)) {
        throw new IllegalArgumentException(
            "A start temperature lies between -50 and 150 degC, found " + celsius);
      }
    }
    if (!(metresPerSecond >= 0 && metresPerSecond <= 50)) {
      throw new IllegalArgumentException("A drive begins at 0 to 50 m/s, found " + metresPerSecond);
    }
  }
}
