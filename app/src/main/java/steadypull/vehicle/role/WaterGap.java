package steadypull.vehicle.role;

/**
 * How far a water sensor is from the engine's water while that is warm. Immutable.
 *
 * @param seconds how many; 0 or more. Old seconds count half when there are very many
 * @param kelvin mean distance, whichever is the hotter; 0 or more
 */
record WaterGap(double seconds, double kelvin) {
  static WaterGap none() {
    return new WaterGap(0, 0);
  }

  WaterGap with(double distanceKelvin) {
    double before = seconds >= SensorRecord.MOST_SECONDS ? seconds / 2 : seconds;
    return new WaterGap(before + 1, kelvin + (distanceKelvin - kelvin) / (before + 1));
  }
}
