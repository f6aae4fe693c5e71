package steadypull.demo.season;

import steadypull.demo.plant.WarmStart;

/**
 * How far a vehicle has cooled down since it was last driven: each part on a time constant of its
 * own (estimated from how slowly such vehicles cool; common practice, no source).
 */
final class Parked {
  private static final double COOLANT_HOURS = 2.2;
  private static final double OIL_HOURS = 1.9;
  private static final double GEARBOX_HOURS = 2.6;
  private static final double CHARGE_CIRCUIT_HOURS = 0.9;

  private Parked() {}

  /**
   * Everything's temperature at the start.
   *
   * @param hours since the engine was switched off, warm
   * @param celsius of the air around it
   */
  static WarmStart after(double hours, double celsius) {
    return new WarmStart(
        cooled(celsius + 22, celsius, hours / CHARGE_CIRCUIT_HOURS),
        cooled(91, celsius, hours / COOLANT_HOURS),
        cooled(98, celsius, hours / OIL_HOURS),
        cooled(78, celsius, hours / GEARBOX_HOURS),
        0);
  }

  private static double cooled(double from, double to, double timeConstants) {
    return to + (from - to) * Math.exp(-timeConstants);
  }
}
