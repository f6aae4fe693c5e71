package steadypull.cli;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;
import steadypull.store.QuietPlace;

/** Reads a place with its surroundings: {@code LAT,LON,RADIUS_M}, with a point in each number. */
final class QuietPlaceOption implements ITypeConverter<QuietPlace> {
  private static final String NUMBER = "\\s*([+-]?\\d+(?:\\.\\d+)?)\\s*";
  private static final Pattern FORM = Pattern.compile(NUMBER + "," + NUMBER + "," + NUMBER);

  @Override
  public QuietPlace convert(String text) {
    Matcher matcher = FORM.matcher(text);
    if (!matcher.matches()) {
      throw new TypeConversionException(
          "expected degrees north, degrees east and metres with commas between and a point in each"
              + " number, such as -41.4871,-118.0312,500, found \""
              + Printable.line(text)
              + "\"");
    }
    double latitude = Double.parseDouble(matcher.group(1));
    double longitude = Double.parseDouble(matcher.group(2));
    double radius = Double.parseDouble(matcher.group(3));
    require("a latitude of -90 to 90 degrees", Math.abs(latitude) <= 90, matcher.group(1));
    require("a longitude of -180 to 180 degrees", Math.abs(longitude) <= 180, matcher.group(2));
    require(
        "a radius of 1 to 50000 m",
        radius >= QuietPlace.LEAST_METRES && radius <= QuietPlace.MOST_METRES,
        matcher.group(3));
    return new QuietPlace(latitude, longitude, radius);
  }

  private static void require(String expected, boolean holds, String found) {
    if (!holds) {
      throw new TypeConversionException("expected " + expected + ", found " + found);
    }
  }
}
