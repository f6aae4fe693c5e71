package steadypull.cli;

import java.util.OptionalDouble;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;
import steadypull.vehicle.Rig;
import steadypull.vehicle.RigMasses;

/** Reads a mass in kg; what a rig may weigh, the rig itself says. */
abstract class MassOption implements ITypeConverter<Double> {
  private final String expected;

  MassOption(String expected) {
    this.expected = expected;
  }

  /** What is said if the option holds that many kg. */
  abstract RigMasses masses(OptionalDouble kilograms);

  @Override
  public Double convert(String text) {
    try {
      double kilograms = Double.parseDouble(text);
      masses(OptionalDouble.of(kilograms)).applyTo(Rig.unknown());
      return kilograms;
    } catch (IllegalArgumentException unusable) {
      throw new TypeConversionException(
          "expected kg from " + expected + ", found \"" + text + "\"");
    }
  }

  /** Vehicle and trailer together. */
  static final class Both extends MassOption {
    Both() {
      super("300 to 60000 such as 4200");
    }

    @Override
    RigMasses masses(OptionalDouble kilograms) {
      return new RigMasses(kilograms, OptionalDouble.empty());
    }
  }

  /** The trailer alone. */
  static final class Trailer extends MassOption {
    Trailer() {
      super("0 (none) to 50000 such as 2400");
    }

    @Override
    RigMasses masses(OptionalDouble kilograms) {
      return new RigMasses(OptionalDouble.empty(), kilograms);
    }
  }
}
