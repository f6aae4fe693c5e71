package steadypull.cli;

import java.nio.file.Path;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;
import steadypull.report.ReportFile;

/** Reads where a form goes: a path whose name tells of which kind it is. */
final class ReportPlace implements ITypeConverter<Path> {
  @Override
  public Path convert(String text) {
    Path place = new PlainText.Place().convert(text);
    if (!ReportFile.isKnown(place)) {
      throw new TypeConversionException(
          "expected a name that ends in %s, found \"%s\""
              .formatted(ReportFile.ENDINGS, Printable.line(text)));
    }
    return place;
  }
}
