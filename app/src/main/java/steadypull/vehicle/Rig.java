package steadypull.vehicle;

import java.util.OptionalDouble;

/**
 * What is being moved: vehicle and trailer together. Every figure is optional.
 *
 * @param massKilograms 300 to 60000 kg
 * @param dragAreaSquareMetres drag coefficient times frontal area, 0.3 to 15 m2
 * @param rollingResistance dimensionless, 0.003 to 0.05
 * @param tyreRadiusMetres dynamic rolling radius of the driven wheels, 0.2 to 0.8 m
 */
public record Rig(
    OptionalDouble massKilograms,
    OptionalDouble dragAreaSquareMetres,
    OptionalDouble rollingResistance,
    OptionalDouble tyreRadiusMetres) {
  public Rig {
    requireBetween("mass_kg", massKilograms, 300, 60_000);
    requireBetween("drag_area_m2", dragAreaSquareMetres, 0.3, 15);
    requireBetween("rolling_resistance", rollingResistance, 0.003, 0.05);
    requireBetween("tyre_radius_m", tyreRadiusMetres, 0.2, 0.8);
  }

  /** A rig of which nothing is known. */
  public static Rig unknown() {
    return new Rig(
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty());
  }

  private static void requireBetween(
      String name, OptionalDouble value, double lowest, double highest) {
    if (value.isPresent() && !(value.getAsDouble() >= lowest && value.getAsDouble() <= highest)) {
      throw new IllegalArgumentException(
          "%s lies between %s and %s, found %s"
              .formatted(name, lowest, highest, value.getAsDouble()));
    }
  }
}
