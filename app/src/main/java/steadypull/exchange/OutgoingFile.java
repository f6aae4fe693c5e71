package steadypull.exchange;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;

/** What kind of file a trip is to be written to: the one place where its name decides. */
public sealed interface OutgoingFile {
  /** The endings that are known, for people. */
  String ENDINGS = ".csv and .csv.gz (trip table), .trip (trip file), .gpx and .gpx.gz (track)";

  /** Where it goes. */
  Path path();

  /** A trip table; packed if the name ends in {@code .gz}. */
  record Table(Path path) implements OutgoingFile {}

  /** A trip file: a library with one trip. */
  record Trip(Path path) implements OutgoingFile {}

  /** A track in XML; packed if the name ends in {@code .gz}. */
  record Track(Path path) implements OutgoingFile {}

  /** A name that tells no kind. */
  record Unknown(Path path) implements OutgoingFile {}

  /** Tells the kind; what is no file, such as a pipe, takes a table whatever its name. */
  static OutgoingFile of(Path path) {
    String name = String.valueOf(path.getFileName()).toLowerCase(Locale.ROOT);
    if (name.endsWith(".trip")) {
      return new Trip(path);
    }
    if (name.endsWith(".gpx") || name.endsWith(".gpx.gz")) {
      return new Track(path);
    }
    boolean isTable = name.endsWith(".csv") || name.endsWith(".csv.gz");
    return isTable || isNoFile(path) ? new Table(path) : new Unknown(path);
  }

  private static boolean isNoFile(Path path) {
    return Files.exists(path) && !Files.isRegularFile(path) && !Files.isDirectory(path);
  }
}
