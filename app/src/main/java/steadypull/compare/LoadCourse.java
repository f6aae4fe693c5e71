package steadypull.compare;

/** What heats and cools a store, second by second since the onset. One thread. */
interface LoadCourse {
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

  /** Road speed, m/s, 0 or more. */
  double metresPerSecond(int second);

  /** Density of the outside air against that at 20 degC and sea level. */
  double densityShare(int second);

  /** Whether the air comes from a workshop's fan, whatever the rollers' speed. */
  boolean isOnRollers();
}
