package steadypull.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.BasicFileAttributes;

/**
 * A private copy of a library, for reading where nothing may be written: SQLite makes files beside
 * a database even to read it. Gone when closed. One thread.
 */
final class ReadingCopy implements AutoCloseable {
  private static final int MOST_TRIES = 5;

  private final PrivateFolder place;

  private ReadingCopy(PrivateFolder place) {
    this.place = place;
  }

  /** Whether the library of a folder is not there, or not to be written. */
  static boolean isNeeded(Path folder) {
    Path file = LibraryFile.in(folder);
    if (Files.exists(file)) {
      return !Files.isWritable(folder) || !Files.isWritable(file);
    }
    return !Files.exists(folder) || Files.isDirectory(folder);
  }

  /** Copies a library; one that is not there gives an empty folder. */
  static ReadingCopy of(Path folder) throws LibraryException {
    Path file = LibraryFile.in(folder);
    try {
      ReadingCopy copy = new ReadingCopy(PrivateFolder.make());
      try {
        copy.take(file);
        return copy;
      } catch (IOException e) {
        copy.close();
        throw e;
      }
    } catch (IOException e) {
      throw LibraryFault.of("make a copy for reading", file, e);
    }
  }

  Path folder() {
    return place.path();
  }

  @Override
  public void close() {
    place.close();
  }

  /**
   * The log is only added to while the file stays as it is, so a file that has not changed
   * meanwhile and the log after it belong together.
   */
  private void take(Path file) throws IOException {
    for (int tries = 0; tries < MOST_TRIES && Files.exists(file); tries++) {
      BasicFileAttributes before = attributes(file);
      Path copy = LibraryFile.in(folder());
      copy(file, copy);
      copy(LibraryFile.logOf(file), LibraryFile.logOf(copy));
      BasicFileAttributes after = attributes(file);
      if (after.size() == before.size()
          && after.lastModifiedTime().equals(before.lastModifiedTime())) {
        return;
      }
    }
  }

  private static BasicFileAttributes attributes(Path file) throws IOException {
    return Files.readAttributes(file, BasicFileAttributes.class);
  }

  private static void copy(Path from, Path to) throws IOException {
    if (Files.exists(from)) {
      Files.copy(from, to, StandardCopyOption.REPLACE_EXISTING);
    } else {
      Files.deleteIfExists(to);
    }
  }
}
