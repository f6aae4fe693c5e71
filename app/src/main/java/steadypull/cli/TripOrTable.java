package steadypull.cli;

import java.io.File;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Optional;
import steadypull.compare.TripPart;

/**
 * What somebody named: a trip of the library or a table, and the part of it that counts. Immutable.
 *
 * @param what an id, or a file
 * @param span the part; empty: the whole
 */
record TripOrTable(String what, Optional<TripPart.Span> span) {
  /** A file whose own name looks like a part is meant as a whole. */
  static TripOrTable of(String named) {
    if (isFile(named)) {
      return new TripOrTable(named, Optional.empty());
    }
    TripPart part = TripPart.parse(named);
    return new TripOrTable(part.what(), part.span());
  }

  /** An id of a trip has neither folder nor ending. */
  boolean isTable() {
    return isTable(what);
  }

  /** An id of a trip has neither folder nor ending. */
  static boolean isTable(String what) {
    return what.indexOf('/') >= 0
        || what.indexOf(File.separatorChar) >= 0
        || what.indexOf('.') >= 0
        || isFile(what);
  }

  private static boolean isFile(String what) {
    try {
      return Files.isRegularFile(Path.of(what));
    } catch (InvalidPathException noPath) {
      return false;
    }
  }
}
