package steadypull.exchange;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;

/**
 * What kind of file somebody wants to take in: the one place where that is decided, by content
 * first and by name where the content may be anything.
 */
public sealed interface IncomingFile {
  /** Where it lies. */
  Path path();

  /** A trip table, plain or packed, our own or foreign. */
  record Table(Path path) implements IncomingFile {}

  /** A trip file: a library with one trip. */
  record Trip(Path path) implements IncomingFile {}

  /** A route or a track in XML. */
  record Route(Path path) implements IncomingFile {}

  /** Tells the kind; a file that cannot be read counts as what its name says. */
  static IncomingFile of(Path path) {
    String name = String.valueOf(path.getFileName()).toLowerCase(Locale.ROOT);
    String start = start(path);
    if (start.startsWith("SQLite format 3\0") || name.endsWith(".trip")) {
      return new Trip(path);
    }
    boolean isXml = start.replaceFirst("^\uFEFF", "").stripLeading().startsWith("<");
    return isXml || name.endsWith(".gpx") || name.endsWith(".gpx.gz")
        ? new Route(path)
        : new Table(path);
  }

  private static String start(Path path) {
    if (!Files.isRegularFile(path)) {
      return "";
    }
    try (InputStream bytes = Files.newInputStream(path)) {
      return new String(bytes.readNBytes(64), StandardCharsets.UTF_8);
    } catch (IOException unreadable) {
      return "";
    }
  }
}
