package steadypull.vehicle.role;

/**
 * How a sensor's rise over outside air goes with manifold pressure while the vehicle moves, and how
 * much of its movement is quick: sums of a straight-line fit. Immutable.
 *
 * @param seconds how many; 0 or more. Old seconds count half when there are very many
 * @param pressure mean manifold pressure, kPa absolute
 * @param rise mean rise over outside air, K
 * @param pressureSquares sum of squared deviations of pressure, kPa2
 * @param products sum of products of both deviations, K.kPa
 * @param riseSquares sum of squared deviations of rise, K2
 * @param quickSquares sum of squared distances from the sensor's own slow mean, K2
 */
record BoostTrend(
    double seconds,
    double pressure,
    double rise,
    double pressureSquares,
    double products,
    double riseSquares,
    double quickSquares) {
  /** Less spread of pressure than this does not tell a slope; kPa, estimated. */
  private static final double LEAST_SPREAD_KILOPASCALS = 10;

  static BoostTrend none() {
    return new BoostTrend(0, 0, 0, 0, 0, 0, 0);
  }

  /**
   * Takes one second.
   *
   * @param fromSlowKelvin how far the reading is from the sensor's own slow mean
   */
  BoostTrend with(double reading, double fromSlowKelvin, Moment moment) {
    if (seconds >= SensorRecord.MOST_SECONDS) {
      return halved().with(reading, fromSlowKelvin, moment);
    }
    double count = seconds + 1;
    double newRise = reading - moment.outsideCelsius();
    double fromPressure = moment.manifoldKilopascals() - pressure;
    double fromRise = newRise - rise;
    double keep = seconds / count;
    return new BoostTrend(
        count,
        pressure + fromPressure / count,
        rise + fromRise / count,
        pressureSquares + keep * fromPressure * fromPressure,
        products + keep * fromPressure * fromRise,
        riseSquares + keep * fromRise * fromRise,
        quickSquares + fromSlowKelvin * fromSlowKelvin);
  }

  private BoostTrend halved() {
    return new BoostTrend(
        seconds / 2,
        pressure,
        rise,
        pressureSquares / 2,
        products / 2,
        riseSquares / 2,
        quickSquares / 2);
  }

  /** Whether pressure has varied enough, and for long enough, to tell a slope. */
  boolean isTelling(double leastSeconds) {
    return seconds >= leastSeconds
        && Math.sqrt(pressureSquares / seconds) >= LEAST_SPREAD_KILOPASCALS;
  }

  /** K of rise for each 100 kPa; only if {@link #isTelling}. */
  double kelvinPer100Kilopascals() {
    return 100 * products / pressureSquares;
  }

  /** The share of the movement that is quick, 0 for a large store, 1 and more for thin air. */
  double quickness() {
    return riseSquares == 0 ? 0 : Math.sqrt(quickSquares / riseSquares);
  }
}
