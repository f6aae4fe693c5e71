package steadypull.store;

import org.jdbi.v3.core.JdbiException;

/** The database gave what it holds, and that is not what was written. */
final class DamagedTripException extends JdbiException {
  private static final long serialVersionUID = 1L;

  DamagedTripException(String message) {
    super(message);
  }

  DamagedTripException(String message, Throwable cause) {
    super(message, cause);
  }
}
