package steadypull.cli;

import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import steadypull.vehicle.Rig;
import steadypull.vehicle.RigMasses;

/** What a rig weighs, as options that several commands share. */
final class MassOptions {
  @Option(
      names = "--mass",
      paramLabel = "KG",
      converter = MassOption.Both.class,
      description = "What vehicle and trailer weigh together.")
  private @Nullable Double both;

  @Option(
      names = "--trailer-mass",
      paramLabel = "KG",
      converter = MassOption.Trailer.class,
      description = "What the trailer alone weighs, a part of --mass; 0 without one.")
  private @Nullable Double trailer;

  /** Whether any of these was given. */
  boolean saySomething() {
    return both != null || trailer != null;
  }

  /** What was given. */
  RigMasses masses() {
    return new RigMasses(optional(both), optional(trailer));
  }

  /** The rig with what was given. */
  Rig applyTo(Rig before) throws CommandFailure {
    try {
      return masses().applyTo(before);
    } catch (IllegalArgumentException impossible) {
      throw new CommandFailure(
          "Could not set the masses: %s. Give --mass and --trailer-mass together. Nothing was changed."
              .formatted(impossible.getMessage()),
          impossible);
    }
  }

  private static OptionalDouble optional(@Nullable Double kilograms) {
    return kilograms == null ? OptionalDouble.empty() : OptionalDouble.of(kilograms);
  }
}
