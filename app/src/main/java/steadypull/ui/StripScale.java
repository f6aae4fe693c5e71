package steadypull.ui;

/**
 * Turns times and temperatures of one strip into places on the screen. The window reaches from 40
 * degrees under the limit to 8 over it, so that gaps compare between strips.
 *
 * @param slot the strip's place
 * @param limitCelsius the limit, or the middle of the window where there is none
 */
record StripScale(StripSlot slot, double limitCelsius) {
  private static final double OVER_CELSIUS = 8;
  private static final double WINDOW_CELSIUS = 48;
  private static final double EDGE = 2;
  private static final double SECONDS_PER_MINUTE = 60;

  /** x of a moment; seconds from now, negative in the past. */
  static double x(double secondsFromNow) {
    return DriveGeometry.NOW + secondsFromNow / SECONDS_PER_MINUTE * DriveGeometry.MINUTE;
  }

  /** The moment at an x; seconds from now. */
  static double seconds(double x) {
    return (x - DriveGeometry.NOW) / DriveGeometry.MINUTE * SECONDS_PER_MINUTE;
  }

  /** y of the limit line. */
  double limitY() {
    return slot.top() + slot.height() * OVER_CELSIUS / WINDOW_CELSIUS;
  }

  /** y of a temperature; one outside the window rides its edge. */
  double y(double celsius) {
    double free =
        slot.top() + slot.height() * (limitCelsius + OVER_CELSIUS - celsius) / WINDOW_CELSIUS;
    return Math.clamp(free, slot.top() + EDGE, slot.top() + slot.height() - EDGE);
  }
}
