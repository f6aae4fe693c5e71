package steadypull.compare;

/**
 * In what one run differs from the next without any channel telling. Immutable.
 *
 * @param outsideKelvin that the outside air was warmer than its sensor told
 * @param conductance factor by wind and whatever stood before the radiator, above 0
 * @param heat factor by the drift of the sensors that tell it, above 0
 * @param startCelsius temperature of the store at the first second
 * @param sensorKelvin that the store's own sensor tells too much
 */
record Effects(
    double outsideKelvin,
    double conductance,
    double heat,
    double startCelsius,
    double sensorKelvin) {
  /** None, from a start on. */
  static Effects none(double startCelsius) {
    return new Effects(0, 1, 1, startCelsius, 0);
  }
}
