package steadypull.store;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import org.sqlite.SQLiteException;
import steadypull.store.LibraryException.Reason;

/** Turns what database and file system say into words for the user. */
final class LibraryFault {
  /**
   * The low byte of an SQLite result code is the primary code (SQLite, "Result and Error Codes").
   */
  private static final int PRIMARY_CODE = 0xFF;

  private LibraryFault() {}

  /** The fault of a database call while trying something, such as {@code list the trips}. */
  static LibraryException of(String tried, Path file, Throwable thrown) {
    SQLiteException fault = find(thrown);
    if (fault == null) {
      return make(tried, file, Reason.INPUT_OUTPUT, String.valueOf(thrown.getMessage()), thrown);
    }
    Reason reason =
        switch (fault.getResultCode().code & PRIMARY_CODE) {
          case 5, 6 -> Reason.BUSY;
          case 8 -> Reason.READ_ONLY;
          case 11 -> Reason.DAMAGED;
          case 13 -> Reason.DISK_FULL;
          case 14 -> Reason.READ_ONLY;
          case 26 -> Reason.NOT_A_LIBRARY;
          default -> Reason.INPUT_OUTPUT;
        };
    return make(tried, file, reason, fault.getResultCode().name(), thrown);
  }

  /** The fault of a file call. */
  static LibraryException of(String tried, Path file, IOException thrown) {
    Reason reason =
        thrown instanceof AccessDeniedException ? Reason.READ_ONLY : Reason.INPUT_OUTPUT;
    String found = thrown.getClass().getSimpleName() + ": " + thrown.getMessage();
    return make(tried, file, reason, found, thrown);
  }

  private static LibraryException make(
      String tried, Path file, Reason reason, String found, Throwable cause) {
    String message =
        "Could not %s in %s: expected %s, found %s (%s). %s."
            .formatted(tried, file, expected(reason), inWords(reason), found, advice(reason));
    return new LibraryException(reason, message, cause);
  }

  private static String expected(Reason reason) {
    return switch (reason) {
      case DISK_FULL, MEMORY_FULL -> "room to write";
      case READ_ONLY -> "a folder and a file that may be written";
      case BUSY -> "nobody else to be writing";
      case DAMAGED, NOT_A_LIBRARY, NEWER_SCHEMA -> "a trip library";
      case UNKNOWN_TRIP, AMBIGUOUS_TRIP -> "one trip";
      case INPUT_OUTPUT -> "the file system to answer";
    };
  }

  private static String inWords(Reason reason) {
    return switch (reason) {
      case DISK_FULL, MEMORY_FULL -> "no room left";
      case READ_ONLY -> "that it may not be written or opened";
      case BUSY -> "another program holding it";
      case DAMAGED -> "a damaged file";
      case NOT_A_LIBRARY -> "a file that is not a library";
      case NEWER_SCHEMA -> "a newer one";
      case UNKNOWN_TRIP, AMBIGUOUS_TRIP -> "another number";
      case INPUT_OUTPUT -> "a fault";
    };
  }

  private static String advice(Reason reason) {
    return switch (reason) {
      case DISK_FULL, MEMORY_FULL ->
          "Free some room; what was accepted is kept in memory and written as soon as there is"
              + " room";
      case READ_ONLY -> "Give yourself the right to write there, or name another folder";
      case BUSY -> "Close the other program or try again";
      case DAMAGED, NOT_A_LIBRARY ->
          "Nothing was changed; put a backup in its place or name another folder";
      case NEWER_SCHEMA -> "Update the program";
      case UNKNOWN_TRIP, AMBIGUOUS_TRIP -> "Look it up in the list of trips";
      case INPUT_OUTPUT -> "Check the disk and its connection, then try again";
    };
  }

  private static @Nullable SQLiteException find(Throwable thrown) {
    for (Throwable cause = thrown; cause != null; cause = cause.getCause()) {
      if (cause instanceof SQLiteException fault) {
        return fault;
      }
    }
    return null;
  }
}
