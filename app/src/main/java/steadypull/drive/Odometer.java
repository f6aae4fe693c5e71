package steadypull.drive;

/**
 * What a vehicle drives in a second, from the speed that it tells. Whole km/h are what a control
 * unit's counting leaves after it has cut off the rest, half a unit on the mean: 500 m an hour. So
 * half a unit is added to them, until the first speed with decimals shows that this vehicle cuts
 * nothing off. Who tells 0 stands. Pipeline thread only; the same speeds give the same metres.
 */
final class Odometer {
  private static final double KILOMETRES_PER_HOUR = 3.6;
  private static final double CUT_OFF_KILOMETRES_PER_HOUR = 0.5;

  /** Nearer to a whole number than any channel's decimals. */
  private static final double WHOLE = 1e-6;

  private boolean isWhole = true;

  /**
   * Metres driven in a second.
   *
   * @param kilometresPerHour as the vehicle tells it, 0 or more; 0 where nobody tells one
   */
  double metres(double kilometresPerHour) {
    isWhole &= Math.abs(kilometresPerHour - Math.rint(kilometresPerHour)) < WHOLE;
    double cutOff = isWhole && kilometresPerHour > 0 ? CUT_OFF_KILOMETRES_PER_HOUR : 0;
    return (kilometresPerHour + cutOff) / KILOMETRES_PER_HOUR;
  }
}
