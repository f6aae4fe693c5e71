package steadypull.cli;

import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;
import steadypull.vehicle.TyreSize;

/** Reads a tyre size as a side wall says it. */
final class TyreOption implements ITypeConverter<TyreSize> {
  @Override
  public TyreSize convert(String text) {
    try {
      return TyreSize.of(text);
    } catch (IllegalArgumentException unreadable) {
      throw new TypeConversionException(
          unreadable.getMessage() + "; or say tyre_radius_m in a rig file");
    }
  }
}
