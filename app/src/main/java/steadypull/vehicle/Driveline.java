package steadypull.vehicle;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What lies between engine and road, as far as known.
 *
 * @param gearRatios engine turns per output-shaft turn, first gear first, each 0.1 to 30; empty if
 *     unknown
 * @param axleRatio output-shaft turns per wheel turn, 0.5 to 30
 * @param ratedEngineSpeed highest engine speed that advice may ask for, 500 to 10000 r/min
 * @param tyreSize of the driven wheels, as their side wall says
 */
public record Driveline(
    List<Double> gearRatios,
    OptionalDouble axleRatio,
    OptionalDouble ratedEngineSpeed,
    Optional<TyreSize> tyreSize) {
  public Driveline {
    Objects.requireNonNull(tyreSize);
    gearRatios = List.copyOf(gearRatios);
    for (double ratio : gearRatios) {
      requireBetween("gear_ratios", ratio, 0.1, 30);
    }
    axleRatio.ifPresent(ratio -> requireBetween("axle_ratio", ratio, 0.5, 30));
    ratedEngineSpeed.ifPresent(
        speed -> requireBetween("rated_engine_speed_r_min", speed, 500, 10_000));
  }

  /** A driveline whose tyre size nobody has said. */
  public Driveline(
      List<Double> gearRatios, OptionalDouble axleRatio, OptionalDouble ratedEngineSpeed) {
    this(gearRatios, axleRatio, ratedEngineSpeed, Optional.empty());
  }

  /** The same driveline on other tyres. */
  public Driveline withTyreSize(Optional<TyreSize> other) {
    return new Driveline(gearRatios, axleRatio, ratedEngineSpeed, other);
  }

  /** A driveline of which nothing is known. */
  public static Driveline unknown() {
    return new Driveline(List.of(), OptionalDouble.empty(), OptionalDouble.empty());
  }

  private static void requireBetween(String name, double value, double lowest, double highest) {
    if (!(value >= lowest && value <= highest)) {
      throw new IllegalArgumentException(
          "%s lies between %s and %s, found %s".formatted(name, lowest, highest, value));
    }
  }
}
