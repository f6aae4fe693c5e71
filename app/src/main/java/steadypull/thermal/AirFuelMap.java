package steadypull.thermal;

import java.util.Arrays;

/**
 * Mass of air for each kilojoule of fuel heat by the engine's torque, as this vehicle has shown it:
 * rich under full load, lean at little, whatever the engine speed. By power alone, a low gear at
 * little load and a high one at full load would be taken for the same. Bins of equal width, each
 * begun from its nearest neighbour that has shown something. Pipeline thread only.
 */
final class AirFuelMap {
  private static final double BIN_NEWTON_METRES = 60;
  private static final int BINS = 50;

  /** A diesel of 42.8 MJ/kg at an air-fuel ratio of 24: 0.56 g/s per kW (computed). */
  private static final double USUAL_GRAMS_PER_KILOJOULE = 0.56;

  /** So many seconds in a bin outweigh what its neighbours say (estimated). */
  private static final double NEIGHBOUR_SECONDS = 5;

  private static final double LONGEST_MEMORY_SECONDS = 120;

  /** With less fuel than this the ratio says nothing. */
  private static final double LEAST_FUEL_KILOWATTS = 40;

  private final double[] ratios = new double[BINS];
  private final double[] seconds = new double[BINS];

  AirFuelMap() {
    Arrays.fill(ratios, USUAL_GRAMS_PER_KILOJOULE);
  }

  /** Learns from one moment that stands for the given seconds. */
  void learn(double newtonMetres, double airGramsPerSecond, double fuelKilowatts, double span) {
    if (fuelKilowatts < LEAST_FUEL_KILOWATTS) {
      return;
    }
    int bin = bin(newtonMetres);
    double before = at(newtonMetres);
    seconds[bin] = Math.min(LONGEST_MEMORY_SECONDS, seconds[bin] + span);
    double weight = Math.min(1, span / (NEIGHBOUR_SECONDS + seconds[bin]));
    ratios[bin] = before + weight * (airGramsPerSecond / fuelKilowatts - before);
  }

  /** Grams of air for each kilojoule of fuel. */
  double at(double newtonMetres) {
    int bin = bin(newtonMetres);
    for (int away = 0; away < BINS; away++) {
      if (bin - away >= 0 && seconds[bin - away] > 0) {
        return ratios[bin - away];
      }
      if (bin + away < BINS && seconds[bin + away] > 0) {
        return ratios[bin + away];
      }
    }
    return USUAL_GRAMS_PER_KILOJOULE;
  }

  private static int bin(double newtonMetres) {
    return Math.clamp((int) (newtonMetres / BIN_NEWTON_METRES), 0, BINS - 1);
  }
}
