package steadypull.vehicle;

import java.util.List;
import java.util.OptionalDouble;

/**
 * What lies between engine and road, as far as known.
 *
 * @param gearRatios engine turns per output-shaft turn, first gear first; empty if unknown
 * @param axleRatio output-shaft turns per wheel turn
 * @param ratedEngineSpeed highest engine speed that advice may ask for, r/min
 */
public record Driveline(
    List<Double> gearRatios, OptionalDouble axleRatio, OptionalDouble ratedEngineSpeed) {
  public Driveline {
    gearRatios = List.copyOf(gearRatios);
  }

  /** A driveline of which nothing is known. */
  public static Driveline unknown() {
    return new Driveline(List.of(), OptionalDouble.empty(), OptionalDouble.empty());
  }
}
