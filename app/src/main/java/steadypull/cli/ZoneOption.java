package steadypull.cli;

import java.time.DateTimeException;
import java.time.ZoneId;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;
import steadypull.channel.NearMatch;

/** Reads a zone: an offset from UTC, or a name of the tz database. */
final class ZoneOption implements ITypeConverter<ZoneId> {
  static final String DESCRIPTION =
      "Where the clock of a table was: an offset such as +02:00, or a zone's name; stands before"
          + " what a mapping says.";

  @Override
  public ZoneId convert(String text) {
    try {
      return ZoneId.of(text);
    } catch (DateTimeException unknown) {
      throw new TypeConversionException(
          "expected an offset such as +02:00 or the name of a zone, found \""
              + Printable.line(text)
              + "\"."
              + NearMatch.question(text, ZoneId.getAvailableZoneIds()));
    }
  }
}
