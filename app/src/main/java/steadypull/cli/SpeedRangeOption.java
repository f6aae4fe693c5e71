package steadypull.cli;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;
import steadypull.vehicle.SpeedRange;

/** Reads advisable speeds as the commands write them: {@code 60..90}, in km/h. */
final class SpeedRangeOption implements ITypeConverter<SpeedRange> {
  private static final Pattern FORM =
      Pattern.compile("(\\d{1,3}(?:\\.\\d+)?)\\.\\.(\\d{1,3}(?:\\.\\d+)?)");

  @Override
  public SpeedRange convert(String text) {
    Matcher matcher = FORM.matcher(text);
    if (!matcher.matches()) {
      throw new TypeConversionException(
          "expected lowest..highest in km/h such as 60..90, found \"" + text + "\"");
    }
    try {
      return new SpeedRange(
          Double.parseDouble(matcher.group(1)), Double.parseDouble(matcher.group(2)));
    } catch (IllegalArgumentException outOfRange) {
      throw new TypeConversionException(
          "expected lowest..highest from 20 to 130 km/h such as 60..90, found \"" + text + "\"");
    }
  }
}
