package steadypull.thermal;

/**
 * The speed that the driver would drive if the engine could: the speed of late where it could,
 * what it was before where the rig is slowed down by a grade. Pipeline thread only.
 */
final class CruiseSpeed {
  /** From here on the engine gives about all it has. */
  private static final double FULL_SHARE = 0.93;

  private static final double RISE_SECONDS = 4;
  private static final double FALL_SECONDS = 12;

  private double metresPerSecond;

  /** Takes a moment. */
  void accept(double now, double kilowatts, double mostKilowatts, double seconds) {
    boolean isFull = kilowatts >= FULL_SHARE * mostKilowatts;
    if (now >= metresPerSecond) {
      metresPerSecond += (now - metresPerSecond) * -Math.expm1(-seconds / RISE_SECONDS);
    } else if (!isFull) {
      metresPerSecond += (now - metresPerSecond) * -Math.expm1(-seconds / FALL_SECONDS);
    }
  }

  /** Road speed wished for, m/s. */
  double metresPerSecond() {
    return metresPerSecond;
  }
}
