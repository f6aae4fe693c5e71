package steadypull.cli;

import java.time.DateTimeException;
import java.time.OffsetDateTime;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads a moment as RFC 3339 writes it. */
final class StartOption implements ITypeConverter<OffsetDateTime> {
  @Override
  public OffsetDateTime convert(String text) {
    try {
      return OffsetDateTime.parse(text);
    } catch (DateTimeException malformed) {
      throw new TypeConversionException(
          "expected a moment such as 2026-07-15T17:45:12Z or 2026-07-15T19:45:12+02:00, found \""
              + text
              + "\"");
    }
  }
}
