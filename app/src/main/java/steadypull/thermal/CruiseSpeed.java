package steadypull.thermal;

/**
 * The speed that the driver would drive if the engine could: the speed of late where it could, what
 * it was before where the rig is slowed down by a grade. Pipeline thread only.
 */
final class CruiseSpeed {
  private static final double RISE_SECONDS = 4;
  private static final double FALL_SECONDS = 12;

  private double metresPerSecond;

  /**
   * Takes a moment.
   *
   * @param now road speed, m/s
   * @param isGivingAll whether the engine gives all it can, so that the speed says nothing
   * @param seconds that it stands for
   */
  void accept(double now, boolean isGivingAll, double seconds) {
    if (now >= metresPerSecond) {
      metresPerSecond += (now - metresPerSecond) * -Math.expm1(-seconds / RISE_SECONDS);
    } else if (!isGivingAll) {
      metresPerSecond += (now - metresPerSecond) * -Math.expm1(-seconds / FALL_SECONDS);
    }
  }

  /** Road speed wished for, m/s. */
  double metresPerSecond() {
    return metresPerSecond;
  }
}
