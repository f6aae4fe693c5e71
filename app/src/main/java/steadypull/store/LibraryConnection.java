package steadypull.store;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.HandleCallback;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.JdbiException;
import org.jspecify.annotations.Nullable;
import steadypull.store.LibraryException.Reason;

/**
 * The way to one library file. Each question and each change is a transaction on a connection of
 * its own, so that threads do not wait for one another's reading.
 */
final class LibraryConnection implements AutoCloseable {
  private final Path file;
  private final Jdbi jdbi;

  /** Open as long as the library, so that its files do not come and go with every question. */
  private final Handle keeper;

  /** Where it is a copy that is read, and for reading only; null: the library itself. */
  private final @Nullable ReadingCopy copy;

  private final boolean isToRead;

  private LibraryConnection(
      Path file, Jdbi jdbi, Handle keeper, @Nullable ReadingCopy copy, boolean isToRead) {
    this.file = file;
    this.jdbi = jdbi;
    this.keeper = keeper;
    this.copy = copy;
    this.isToRead = isToRead;
  }

  /** Opens the library of a folder, or begins one, and brings it to the present form. */
  static LibraryConnection open(Path folder, Duration busyTimeout) throws LibraryException {
    return open(folder, LibraryFile.in(folder), busyTimeout, null, false);
  }

  /**
   * Opens the library of a folder and changes nothing in it. What is not there is read as an empty
   * library that leaves nothing behind; where nothing may be written, a private copy is read.
   */
  static LibraryConnection openToRead(Path folder, Duration busyTimeout) throws LibraryException {
    if (ReadingCopy.isNeeded(folder)) {
      return openCopy(folder, busyTimeout);
    }
    try {
      return open(folder, LibraryFile.in(folder), busyTimeout, null, true);
    } catch (LibraryException e) {
      if (e.reason() == Reason.READ_ONLY && Files.isReadable(LibraryFile.in(folder))) {
        return openCopy(folder, busyTimeout);
      }
      throw e;
    }
  }

  private static LibraryConnection openCopy(Path folder, Duration busyTimeout)
      throws LibraryException {
    ReadingCopy copy = ReadingCopy.of(folder);
    try {
      return open(copy.folder(), LibraryFile.in(folder), busyTimeout, copy, true);
    } catch (LibraryException e) {
      copy.close();
      throw e;
    }
  }

  private static LibraryConnection open(
      Path folder, Path named, Duration busyTimeout, @Nullable ReadingCopy copy, boolean isToRead)
      throws LibraryException {
    Jdbi jdbi = LibraryFile.connect(LibraryFile.create(folder), busyTimeout);
    Handle keeper = handle(jdbi, named);
    try {
      Schema.bringUpToDate(keeper, named);
      return new LibraryConnection(named, jdbi, keeper, copy, isToRead);
    } catch (JdbiException e) {
      keeper.close();
      throw LibraryFault.of("open the library", named, e);
    } catch (LibraryException e) {
      keeper.close();
      throw e;
    }
  }

  Path file() {
    return file;
  }

  /** A connection for somebody who closes it and changes nothing. */
  Handle handleToRead() throws LibraryException {
    return handle(jdbi, file);
  }

  /** A connection for somebody who closes it. */
  Handle handle() throws LibraryException {
    if (isToRead) {
      throw LibraryFault.openedToRead(file);
    }
    return handle(jdbi, file);
  }

  /**
   * Asks; all answers are of one moment.
   *
   * @param tried for the message of a fault, such as {@code list the trips}
   */
  <T, X extends Exception> T ask(String tried, HandleCallback<T, X> question)
      throws X, LibraryException {
    try {
      return jdbi.<T, X>withHandle(handle -> Transaction.read(handle, question));
    } catch (JdbiException e) {
      throw LibraryFault.of(tried, file, e);
    }
  }

  /** Works outside of any transaction, without changing the library. */
  <T, X extends Exception> T alone(HandleCallback<T, X> work) throws X, LibraryException {
    try (Handle handle = handle(jdbi, file)) {
      return work.withHandle(handle);
    }
  }

  /**
   * Changes everything that the work changes, or nothing if it throws.
   *
   * @param tried for the message of a fault, such as {@code keep a trip}
   */
  <T, X extends Exception> T change(String tried, HandleCallback<T, X> work)
      throws X, LibraryException {
    try (Handle handle = handle()) {
      return Transaction.write(handle, work);
    } catch (JdbiException e) {
      throw LibraryFault.of(tried, file, e);
    }
  }

  @Override
  public void close() {
    keeper.close();
    if (copy != null) {
      copy.close();
    }
  }

  private static Handle handle(Jdbi jdbi, Path file) throws LibraryException {
    try {
      return jdbi.open();
    } catch (JdbiException e) {
      throw LibraryFault.of("open the library", file, e);
    }
  }
}
