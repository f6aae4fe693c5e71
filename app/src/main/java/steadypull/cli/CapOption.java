package steadypull.cli;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;
import steadypull.vehicle.PressureCap;

/** Reads the cap of a cooling system as the commands write it: {@code bar[:source]}. */
final class CapOption implements ITypeConverter<PressureCap> {
  private static final Pattern FORM = Pattern.compile("(\\d+(?:\\.\\d+)?)(?::(.*))?");

  @Override
  public PressureCap convert(String text) {
    Matcher matcher = FORM.matcher(text);
    if (!matcher.matches()) {
      throw refused(text);
    }
    String source = matcher.group(2);
    try {
      return new PressureCap(
          Double.parseDouble(matcher.group(1)),
          LimitOption.provenance(source == null ? "" : source.strip()));
    } catch (IllegalArgumentException outOfRange) {
      throw refused(text);
    }
  }

  private static TypeConversionException refused(String text) {
    return new TypeConversionException(
        "expected what the cap holds, 0 to 3 bar, and where that stands, such as 1.1:maker,"
            + " found \""
            + text
            + "\"");
  }
}
