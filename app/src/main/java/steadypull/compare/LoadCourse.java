package steadypull.compare;

import steadypull.road.StandardAtmosphere;

/** What heats and cools a store, second by second since the onset. One thread. */
interface LoadCourse {
  /** Speed at which radiators are told, m/s. */
  double REFERENCE_SPEED = 25;

  /** Air at 20 degC and sea level, kg/m3. */
  double REFERENCE_DENSITY = 1.204;

  /** Logarithm of a speed of nothing, as far as a power of it goes. */
  double STANDING = -20;

  /** {@link #logSpeed} of a speed in m/s. */
  static double logOfSpeed(double metresPerSecond) {
    return Math.max(STANDING, Math.log(metresPerSecond / REFERENCE_SPEED));
  }

  /** {@link #logDensity} of air. */
  static double logOfDensity(double kilopascals, double celsius) {
    return Math.log(StandardAtmosphere.density(kilopascals, celsius) / REFERENCE_DENSITY);
  }

  /** First second, 0 or below. */
  int firstSecond();

  /** Second after the last. */
  int endSecond();

  /**
   * Heat that comes in, W; what it is when the store is hotter may be less.
   *
   * @param celsius of the store
   */
  double heatWatts(int second, double celsius);

  /** Outside air by its sensor, degC. */
  double outsideCelsius(int second);

  /** Natural logarithm of the road speed over 25 m/s; {@link #STANDING} at rest. */
  double logSpeed(int second);

  /** Natural logarithm of the outside air's density over that at 20 degC and sea level. */
  double logDensity(int second);

  /** Whether the air comes from a workshop's fan, whatever the rollers' speed. */
  boolean isOnRollers();
}
