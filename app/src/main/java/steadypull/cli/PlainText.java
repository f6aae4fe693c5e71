package steadypull.cli;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.regex.Pattern;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads texts that later stand in lists and file names: one line, and something in it. */
final class PlainText {
  private static final Pattern CONTROL = Pattern.compile("\\p{Cntrl}");

  private PlainText() {}

  private static String line(String text, String what) {
    if (CONTROL.matcher(text).find()) {
      throw new TypeConversionException(
          "expected %s on one line, found a line break or another control character"
              .formatted(what));
    }
    return text.strip();
  }

  private static String filled(String text, String what) {
    String line = line(text, what);
    if (line.isEmpty()) {
      throw new TypeConversionException("expected %s, found blank text".formatted(what));
    }
    return line;
  }

  /** A vehicle's name. */
  static final class Name implements ITypeConverter<String> {
    @Override
    public String convert(String text) {
      return filled(text, "a name");
    }
  }

  /** A run label; it may be empty. */
  static final class Label implements ITypeConverter<String> {
    @Override
    public String convert(String text) {
      return line(text, "a label");
    }
  }

  /** A file or a folder. */
  static final class Place implements ITypeConverter<Path> {
    @Override
    public Path convert(String text) {
      try {
        return Path.of(filled(text, "a path"));
      } catch (InvalidPathException malformed) {
        throw new TypeConversionException(
            "expected a path, found \"%s\": %s".formatted(text, malformed.getReason()));
      }
    }
  }
}
