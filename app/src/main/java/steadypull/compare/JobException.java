package steadypull.compare;

/**
 * A job file that could not be taken. The message names file, line and column, what was expected,
 * what was found and what to do.
 */
public final class JobException extends Exception {
  private static final long serialVersionUID = 1L;

  JobException(String message) {
    super(message);
  }

  JobException(String message, Throwable cause) {
    super(message, cause);
  }
}
