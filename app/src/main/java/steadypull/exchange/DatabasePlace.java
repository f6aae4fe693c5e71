package steadypull.exchange;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;

/** Spares databases: a trip library that was named by mistake is not written over. Stateless. */
final class DatabasePlace {
  /** How an SQLite file begins (SQLite, "Database File Format", 1.3.1). */
  private static final byte[] START = "SQLite format 3\0".getBytes(StandardCharsets.US_ASCII);

  private static final String TRIP = ".trip";

  private DatabasePlace() {}

  /**
   * The same file.
   *
   * @param existing a file that is to be replaced, links followed
   * @throws IOException if it is a library, part of one or another database; trip files are not
   *     spared
   */
  static Path spared(Path existing) throws IOException {
    String name = String.valueOf(existing.getFileName()).toLowerCase(Locale.ROOT);
    if (name.startsWith("library.sqlite") || (!name.endsWith(TRIP) && isDatabase(existing))) {
      throw new DatabaseThereException();
    }
    return existing;
  }

  private static boolean isDatabase(Path file) throws IOException {
    try (InputStream bytes = Files.newInputStream(file)) {
      return Arrays.equals(bytes.readNBytes(START.length), START);
    }
  }

  /** A database stands where a file should go. */
  static final class DatabaseThereException extends IOException {
    DatabaseThereException() {
      super("a trip library or another database there, which is not written over");
    }
  }
}
