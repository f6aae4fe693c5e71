package steadypull.cli;

import java.util.OptionalDouble;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;
import steadypull.vehicle.Rig;

/** Reads what vehicle and trailer weigh together, in kg. */
final class MassOption implements ITypeConverter<Double> {
  @Override
  public Double convert(String text) {
    Rig unknown = Rig.unknown();
    try {
      double kilograms = Double.parseDouble(text);
      return new Rig(
              OptionalDouble.of(kilograms),
              unknown.dragAreaSquareMetres(),
              unknown.rollingResistance(),
              unknown.tyreRadiusMetres())
          .massKilograms()
          .getAsDouble();
    } catch (IllegalArgumentException unusable) {
      throw new TypeConversionException(
          "expected kg from 300 to 60000 such as 4200, found \"" + text + "\"");
    }
  }
}
