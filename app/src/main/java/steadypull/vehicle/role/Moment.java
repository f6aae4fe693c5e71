package steadypull.vehicle.role;

/**
 * What the engine did at one second, as far as it tells the places of sensors apart. Pressures are
 * followed as slowly as sensors follow temperatures.
 *
 * @param outsideCelsius outside air; where no sensor tells, the coolest that any air sensor was
 * @param manifoldKilopascals absolute, above 0
 * @param barometricKilopascals above 0
 * @param isMoving whether cooling air flows: heat that soaks into a standing vehicle tells nothing
 */
record Moment(
    double outsideCelsius,
    double manifoldKilopascals,
    double barometricKilopascals,
    boolean isMoving) {
  /** Absolute manifold pressure from which the compressor heats the air beyond doubt; estimated. */
  static final double BOOST_KILOPASCALS = 180;

  private static final double KELVIN = 273.15;

  /** (k - 1) / k of air, k = 1.4. */
  private static final double EXPONENT = 0.4 / 1.4;

  boolean isUnderBoost() {
    return manifoldKilopascals >= BOOST_KILOPASCALS;
  }

  /**
   * By how much a compressor without any loss would heat outside air to this pressure: T1
   * (ratio^((k-1)/k) - 1), Heywood, Internal Combustion Engine Fundamentals, chapter 6 (from
   * memory). A real one heats it more, by 1 over an efficiency of 0.65 to 0.78 (common practice, no
   * source), so that air before the charge cooler is never cooler than this for long.
   */
  double compressionKelvin() {
    double ratio = Math.max(1, manifoldKilopascals / barometricKilopascals);
    return (outsideCelsius + KELVIN) * (Math.pow(ratio, EXPONENT) - 1);
  }
}
