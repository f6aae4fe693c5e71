package steadypull.cli;

import java.time.DateTimeException;
import java.time.LocalDate;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads on which day a table was written: {@code FILE=YYYY-MM-DD}. */
final class DayOption implements ITypeConverter<DayOption.Told> {
  /** The day of one table. */
  record Told(String file, LocalDate day) {}

  @Override
  public Told convert(String text) {
    int equals = text.lastIndexOf('=');
    if (equals < 1) {
      throw refused(text);
    }
    try {
      return new Told(text.substring(0, equals), LocalDate.parse(text.substring(equals + 1)));
    } catch (DateTimeException noDay) {
      throw refused(text);
    }
  }

  private static TypeConversionException refused(String text) {
    return new TypeConversionException(
        "expected FILE=YYYY-MM-DD such as a.csv=2026-03-10, found \""
            + Printable.line(text)
            + "\"");
  }
}
