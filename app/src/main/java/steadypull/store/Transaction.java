package steadypull.store;

import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.HandleCallback;
import org.jdbi.v3.core.JdbiException;

/**
 * Runs work in one transaction. Written in SQL: the driver's own way leaves a connection that could
 * not begin in a state from which it does not come back.
 */
final class Transaction {
  private Transaction() {}

  /**
   * Runs work that writes; all of it is durable afterwards, or nothing of it if anything is thrown.
   * It asks for the writer's place at its beginning, where waiting for another writer helps.
   */
  static <T, X extends Exception> T write(Handle handle, HandleCallback<T, X> work) throws X {
    return in("beginToWrite", handle, work);
  }

  /** Runs work that reads; all its statements see the library as it is at one moment. */
  static <T, X extends Exception> T read(Handle handle, HandleCallback<T, X> work) throws X {
    return in("beginToRead", handle, work);
  }

  private static <T, X extends Exception> T in(
      String begin, Handle handle, HandleCallback<T, X> work) throws X {
    handle.execute(Sql.of("sqlite." + begin));
    try {
      T result = work.withHandle(handle);
      handle.execute("commit");
      return result;
    } catch (Throwable fault) {
      rollBack(handle, fault);
      throw fault;
    }
  }

  private static void rollBack(Handle handle, Throwable fault) {
    try {
      handle.execute("rollback");
    } catch (JdbiException e) {
      // After some faults, a full disk among them, the database has rolled back already.
      fault.addSuppressed(e);
    }
  }
}
