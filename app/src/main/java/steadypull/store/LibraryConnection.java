package steadypull.store;

import java.nio.file.Path;
import java.time.Duration;
import java.util.function.Function;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.HandleCallback;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.JdbiException;

/**
 * The way to one library file. Each question and each change is a transaction on a connection of
 * its own, so that threads do not wait for one another's reading.
 */
final class LibraryConnection implements AutoCloseable {
  private final Path file;
  private final Jdbi jdbi;

  /** Open as long as the library, so that its files do not come and go with every question. */
  private final Handle keeper;

  private LibraryConnection(Path file, Jdbi jdbi, Handle keeper) {
    this.file = file;
    this.jdbi = jdbi;
    this.keeper = keeper;
  }

  /** Opens the library of a folder, or begins one, and brings it to the present form. */
  static LibraryConnection open(Path folder, Duration busyTimeout) throws LibraryException {
    Path file = LibraryFile.create(folder);
    Jdbi jdbi = LibraryFile.connect(file, busyTimeout);
    Handle keeper = handle(jdbi, file);
    try {
      Schema.bringUpToDate(keeper, file);
      return new LibraryConnection(file, jdbi, keeper);
    } catch (JdbiException e) {
      keeper.close();
      throw LibraryFault.of("open the library", file, e);
    } catch (LibraryException e) {
      keeper.close();
      throw e;
    }
  }

  Path file() {
    return file;
  }

  /** A connection for somebody who closes it. */
  Handle handle() throws LibraryException {
    return handle(jdbi, file);
  }

  /**
   * Asks; all answers are of one moment.
   *
   * @param tried for the message of a fault, such as {@code list the trips}
   */
  <T> T ask(String tried, Function<Handle, T> question) throws LibraryException {
    try {
      return jdbi.withHandle(handle -> Transaction.read(handle, question::apply));
    } catch (JdbiException e) {
      throw LibraryFault.of(tried, file, e);
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
  }

  private static Handle handle(Jdbi jdbi, Path file) throws LibraryException {
    try {
      return jdbi.open();
    } catch (JdbiException e) {
      throw LibraryFault.of("open the library", file, e);
    }
  }
}
