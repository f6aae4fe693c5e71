package steadypull.exchange;

import java.io.EOFException;
import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.zip.ZipException;
import org.jspecify.annotations.Nullable;

/** What a file system found wrong, in words. Stateless. */
final class FileFault {
  private FileFault() {}

  static String whileReading(IOException fault) {
    return switch (fault) {
      case NoSuchFileException _ -> "no file of that name";
      case AccessDeniedException _ -> "that it may not be read";
      case EOFException _ -> "a gzip file that breaks off";
      case ZipException _ -> "a damaged gzip file (" + fault.getMessage() + ")";
      default -> fault.getClass().getSimpleName() + ": " + fault.getMessage();
    };
  }

  /** A table that cannot be read at all. */
  static TableException unreadable(Path file, String found) {
    return new TableException(
        "Could not read %s: expected a file with a trip table, found %s. Nothing was taken; check the path."
            .formatted(CellPlace.shown(file), found));
  }

  /**
   * Words for a file that could not be written.
   *
   * @param file where it should go
   */
  static String whileWriting(IOException fault, Path file) {
    @Nullable Path folder = file.toAbsolutePath().getParent();
    return switch (fault) {
      case NoSuchFileException _ -> "no folder " + folder;
      case DatabasePlace.DatabaseThereException there -> String.valueOf(there.getMessage());
      case AccessDeniedException _ -> "that " + folder + " may not be written to";
      default -> fault.getClass().getSimpleName() + ": " + fault.getMessage();
    };
  }
}
