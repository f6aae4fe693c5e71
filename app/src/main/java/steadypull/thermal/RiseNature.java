package steadypull.thermal;

import java.util.OptionalDouble;

/**
 * What is usual for the temperature of a store when nothing tells what heats it. Immutable. All of
 * it estimated from common practice, no source.
 *
 * @param usualSeconds time constant of a rise under a steady load
 * @param logSpread standard deviation of its natural logarithm: 0.7 is a factor of two either way
 * @param readingKelvin standard deviation of an average over some seconds. Steps of 1 degC give
 *     0.29 K for one reading; those of a slow signal share their error, so that averaging helps
 *     little
 * @param wanderKelvin how far the load of an unknown road moves it away within a minute
 * @param workingCelsius where a thermostat or a warmed-up cooler begins to hold it; below, it warms
 *     up, and its rise says nothing about where it ends. Empty if nothing holds it
 * @param workingSpread standard deviation of that between vehicles, K
 */
record RiseNature(
    double usualSeconds,
    double logSpread,
    double readingKelvin,
    double wanderKelvin,
    OptionalDouble workingCelsius,
    double workingSpread) {

  /** What is usual for a store. */
  static RiseNature of(Store store) {
    return switch (store) {
      case CHARGE_INLET -> unheld(20, 0.8, 1.0, 15);
      case CHARGE_AIR -> unheld(120, 0.6, 0.4, 3);
      case CHARGE_COOLANT -> unheld(150, 0.8, 0.35, 2);
      case ENGINE_COOLANT -> held(180, 0.7, 1, 98, 3);
      case ENGINE_OIL -> held(260, 0.6, 1, 106, 6);
      case TRANSMISSION_FLUID -> held(350, 0.6, 1, 92, 6);
      case EXHAUST -> unheld(20, 0.8, 8, 60);
    };
  }

  private static RiseNature unheld(
      double usualSeconds, double logSpread, double readingKelvin, double wanderKelvin) {
    return new RiseNature(
        usualSeconds, logSpread, readingKelvin, wanderKelvin, OptionalDouble.empty(), 0);
  }

  private static RiseNature held(
      double usualSeconds,
      double logSpread,
      double wanderKelvin,
      double workingCelsius,
      double workingSpread) {
    return new RiseNature(
        usualSeconds,
        logSpread,
        0.35,
        wanderKelvin,
        OptionalDouble.of(workingCelsius),
        workingSpread);
  }
}
