package steadypull.vehicle;

import java.util.OptionalDouble;

/**
 * What is being moved: vehicle and trailer together. Every figure is optional.
 *
 * @param massKilograms of both together, 300 to 60000 kg
 * @param trailerMassKilograms of the trailer alone, 0 (none) to 50000 kg, less than both together
 * @param dragAreaSquareMetres drag coefficient times frontal area, 0.3 to 15 m2
 * @param rollingResistance dimensionless, 0.003 to 0.05
 * @param tyreRadiusMetres dynamic rolling radius of the driven wheels, 0.2 to 0.8 m
 */
public record Rig(
    OptionalDouble massKilograms,
    OptionalDouble trailerMassKilograms,
    OptionalDouble dragAreaSquareMetres,
    OptionalDouble rollingResistance,
    OptionalDouble tyreRadiusMetres) {
  public Rig {
    requireBetween("mass_kg", massKilograms, 300, 60_000);
    requireBetween("trailer_mass_kg", trailerMassKilograms, 0, 50_000);
    requireBetween("drag_area_m2", dragAreaSquareMetres, 0.3, 15);
    requireBetween("rolling_resistance", rollingResistance, 0.003, 0.05);
    requireBetween("tyre_radius_m", tyreRadiusMetres, 0.2, 0.8);
    requireLess(trailerMassKilograms, massKilograms);
  }

  /** A rig of which nobody has said what the trailer alone weighs. */
  public Rig(
      OptionalDouble massKilograms,
      OptionalDouble dragAreaSquareMetres,
      OptionalDouble rollingResistance,
      OptionalDouble tyreRadiusMetres) {
    this(
        massKilograms,
        OptionalDouble.empty(),
        dragAreaSquareMetres,
        rollingResistance,
        tyreRadiusMetres);
  }

  /** A rig of which nothing is known. */
  public static Rig unknown() {
    return new Rig(
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty());
  }

  /** The same rig with other masses. */
  public Rig withMasses(OptionalDouble bothKilograms, OptionalDouble trailerKilograms) {
    return new Rig(
        bothKilograms, trailerKilograms, dragAreaSquareMetres, rollingResistance, tyreRadiusMetres);
  }

  /** The same rig on other tyres. */
  public Rig withTyreRadius(OptionalDouble metres) {
    return new Rig(
        massKilograms, trailerMassKilograms, dragAreaSquareMetres, rollingResistance, metres);
  }

  /** What the vehicle weighs without its trailer, kg; empty unless both masses are known. */
  public OptionalDouble vehicleMassKilograms() {
    return massKilograms.isPresent() && trailerMassKilograms.isPresent()
        ? OptionalDouble.of(massKilograms.getAsDouble() - trailerMassKilograms.getAsDouble())
        : OptionalDouble.empty();
  }

  private static void requireLess(OptionalDouble trailer, OptionalDouble both) {
    if (trailer.isPresent() && both.isPresent() && !(trailer.getAsDouble() < both.getAsDouble())) {
      throw new IllegalArgumentException(
          "trailer_mass_kg lies under mass_kg, which is both together, %s; found %s"
              .formatted(both.getAsDouble(), trailer.getAsDouble()));
    }
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
