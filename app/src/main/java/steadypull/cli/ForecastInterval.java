package steadypull.cli;

import java.util.regex.Pattern;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads whole seconds between blocks of forecasts: 1 or more. */
final class ForecastInterval implements ITypeConverter<Integer> {
  private static final Pattern FORM = Pattern.compile("\\d{1,6}");

  @Override
  public Integer convert(String text) {
    if (!FORM.matcher(text).matches() || Integer.parseInt(text) < 1) {
      throw new TypeConversionException(
          "expected whole seconds, 1 or more, found \"" + text + "\"");
    }
    return Integer.valueOf(text);
  }
}
