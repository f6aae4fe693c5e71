package steadypull.store;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import org.sqlite.SQLiteException;
import steadypull.store.LibraryException.Reason;

/** What database and file system can say, in words for the user. */
enum LibraryFault {
  DISK_FULL(Reason.DISK_FULL, "room to write", "no room left", "Free some room, then try again"),
  READ_ONLY(
      Reason.READ_ONLY,
      "a folder and a file that may be written",
      "that it may not be written or opened",
      "Give yourself the right to write there, or name another folder"),
  BUSY(
      Reason.BUSY,
      "nobody else to be writing",
      "another program holding it",
      "Close the other program or try again"),
  DAMAGED(
      Reason.DAMAGED,
      "a whole trip library",
      "a damaged file",
      "Nothing was changed; \"steadypull check\" puts what can be read into a new library"),
  NOT_A_LIBRARY(
      Reason.NOT_A_LIBRARY,
      "a trip library",
      "a file of another kind",
      "Nothing was changed; name another folder"),
  NO_FOLDER(
      Reason.ALREADY_THERE,
      "a folder or a name that is free",
      "a file",
      "Nothing was changed. Name another folder"),
  INPUT_OUTPUT(
      Reason.INPUT_OUTPUT,
      "the file system to answer",
      "a fault",
      "Check the disk and its connection, then try again");

  /**
   * The low byte of an SQLite result code is the primary code (SQLite, "Result and Error Codes").
   */
  private static final int PRIMARY_CODE = 0xFF;

  private final Reason reason;
  private final String expected;
  private final String found;
  private final String advice;

  LibraryFault(Reason reason, String expected, String found, String advice) {
    this.reason = reason;
    this.expected = expected;
    this.found = found;
    this.advice = advice;
  }

  /** The fault of a database call while trying something, such as {@code list the trips}. */
  static LibraryException of(String tried, Path file, RuntimeException thrown) {
    DamagedTripException damage = find(thrown, DamagedTripException.class);
    if (damage != null) {
      return DAMAGED.exception(tried, file, String.valueOf(damage.getMessage()), thrown);
    }
    SQLiteException cause = find(thrown, SQLiteException.class);
    if (cause == null) {
      return INPUT_OUTPUT.exception(tried, file, String.valueOf(thrown.getMessage()), thrown);
    }
    return ofCode(cause.getResultCode().code & PRIMARY_CODE)
        .exception(tried, file, cause.getResultCode().name(), thrown);
  }

  /** Whether a database call came upon something that is not as it was written. */
  static boolean isDamage(RuntimeException thrown) {
    SQLiteException cause = find(thrown, SQLiteException.class);
    return find(thrown, DamagedTripException.class) != null
        || (cause != null && ofCode(cause.getResultCode().code & PRIMARY_CODE) == DAMAGED);
  }

  /** The fault of a file call. */
  static LibraryException of(String tried, Path file, IOException thrown) {
    return switch (thrown) {
      case AccessDeniedException denied -> READ_ONLY.exception(tried, file, place(denied), thrown);
      case FileAlreadyExistsException there ->
          NO_FOLDER.exception(tried, file, place(there), thrown);
      case FileSystemException fault when fault.getReason() != null ->
          INPUT_OUTPUT.exception(tried, file, fault.getReason() + ": " + place(fault), thrown);
      case FileSystemException fault ->
          INPUT_OUTPUT.exception(tried, file, "at " + place(fault), thrown);
      default -> INPUT_OUTPUT.exception(tried, file, String.valueOf(thrown.getMessage()), thrown);
    };
  }

  private static String place(FileSystemException fault) {
    return String.valueOf(fault.getFile());
  }

  /** Somebody wants to change what was opened for reading. */
  static LibraryException openedToRead(Path file) {
    return new LibraryException(
        Reason.READ_ONLY,
        "Could not change the library %s: expected one opened for writing, found one opened for reading. Open it again for writing."
            .formatted(file));
  }

  private static LibraryFault ofCode(int primaryCode) {
    return switch (primaryCode) {
      case 5, 6 -> BUSY; // SQLITE_BUSY, SQLITE_LOCKED
      case 8, 14 -> READ_ONLY; // SQLITE_READONLY, SQLITE_CANTOPEN
      case 11 -> DAMAGED; // SQLITE_CORRUPT
      case 13 -> DISK_FULL; // SQLITE_FULL
      case 26 -> NOT_A_LIBRARY; // SQLITE_NOTADB
      default -> INPUT_OUTPUT;
    };
  }

  private LibraryException exception(String tried, Path file, String detail, Exception cause) {
    return new LibraryException(
        reason,
        "Could not %s (library %s): expected %s, found %s (%s). %s."
            .formatted(tried, file, expected, found, detail, advice),
        cause);
  }

  private static <T extends Throwable> @Nullable T find(Throwable thrown, Class<T> wanted) {
    for (Throwable cause = thrown; cause != null; cause = cause.getCause()) {
      if (wanted.isInstance(cause)) {
        return wanted.cast(cause);
      }
    }
    return null;
  }
}
