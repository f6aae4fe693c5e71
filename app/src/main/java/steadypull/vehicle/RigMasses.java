package steadypull.vehicle;

import java.util.OptionalDouble;

/**
 * What somebody says of the masses of a rig; what is not said stays as it was. Immutable.
 *
 * @param bothKilograms vehicle and trailer together, see {@link Rig}
 * @param trailerKilograms the trailer alone, see {@link Rig}
 */
public record RigMasses(OptionalDouble bothKilograms, OptionalDouble trailerKilograms) {
  /** Nothing was said. */
  public static final RigMasses UNSAID =
      new RigMasses(OptionalDouble.empty(), OptionalDouble.empty());

  /** The rig with what was said; throws IllegalArgumentException where that cannot be. */
  public Rig applyTo(Rig before) {
    return before.withMasses(
        bothKilograms.isPresent() ? bothKilograms : before.massKilograms(),
        trailerKilograms.isPresent() ? trailerKilograms : before.trailerMassKilograms());
  }
}
