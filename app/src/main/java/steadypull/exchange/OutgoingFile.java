package steadypull.exchange;

import java.nio.file.Path;
import java.util.Locale;

/** What kind of file a trip is to be written to: the one place where its name decides. */
public sealed interface OutgoingFile {
  /** Where it goes. */
  Path path();

  /** A trip table; packed if the name ends in {@code .gz}. */
  record Table(Path path) implements OutgoingFile {}

  /** A trip file: a library with one trip. */
  record Trip(Path path) implements OutgoingFile {}

  /** A track in XML. */
  record Track(Path path) implements OutgoingFile {}

  /** Tells the kind; every other name is a table's. */
  static OutgoingFile of(Path path) {
    String name = String.valueOf(path.getFileName()).toLowerCase(Locale.ROOT);
    if (name.endsWith(".trip")) {
      return new Trip(path);
    }
    return name.endsWith(".gpx") ? new Track(path) : new Table(path);
  }
}
