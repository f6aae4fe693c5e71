package steadypull.cli;

import java.time.Duration;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads a duration as the commands write it: {@code 90s}, {@code 15m}, {@code 2h}. */
final class Span implements ITypeConverter<Duration> {
  private static final Pattern FORM = Pattern.compile("(\\d{1,6})([smh])");

  @Override
  public Duration convert(String text) {
    Matcher matcher = FORM.matcher(text);
    if (!matcher.matches()) {
      throw new TypeConversionException(
          "expected a duration such as 90s, 15m or 2h, found \"" + text + "\"");
    }
    long amount = Long.parseLong(matcher.group(1));
    if (amount == 0) {
      throw new TypeConversionException(
          "expected a duration above nothing, found \"" + text + "\"");
    }
    return switch (matcher.group(2)) {
      case "s" -> Duration.ofSeconds(amount);
      case "m" -> Duration.ofMinutes(amount);
      default -> Duration.ofHours(amount);
    };
  }
}
