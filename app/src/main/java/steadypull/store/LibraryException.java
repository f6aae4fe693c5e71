package steadypull.store;

import java.util.Objects;

/**
 * The library could not do what was asked. The message says what was tried, what was expected, what
 * was found and what to do.
 */
public final class LibraryException extends Exception {
  private final Reason reason;

  LibraryException(Reason reason, String message) {
    super(message);
    this.reason = Objects.requireNonNull(reason);
  }

  LibraryException(Reason reason, String message, Throwable cause) {
    super(message, cause);
    this.reason = Objects.requireNonNull(reason);
  }

  /** Why, for whoever decides what happens next. */
  public Reason reason() {
    return reason;
  }

  /** The closed set of reasons. */
  public enum Reason {
    /** No room: what was accepted stays in memory, a later commit may succeed. */
    DISK_FULL,
    /** Folder or file cannot be written. */
    READ_ONLY,
    /** Another program holds the library; trying again may succeed. */
    BUSY,
    /** The file has lost its form. */
    DAMAGED,
    /** The file belongs to another program. */
    NOT_A_LIBRARY,
    /** A newer version of the program made the file. */
    NEWER_SCHEMA,
    /** No trip of that id. */
    UNKNOWN_TRIP,
    /** Several trips begin so. */
    AMBIGUOUS_TRIP,
    /** Commits have failed for so long that nothing more fits into memory. */
    MEMORY_FULL,
    /** Something else is where something is to be written. */
    ALREADY_THERE,
    /** The file system gave another fault. */
    INPUT_OUTPUT
  }
}
