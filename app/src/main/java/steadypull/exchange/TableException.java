package steadypull.exchange;

/**
 * A file that could not be taken or written. The message names file, line, column, what was found,
 * what was expected and what to do. Nothing of the file was taken.
 */
public final class TableException extends Exception {
  TableException(String message) {
    super(message);
  }

  TableException(String message, Throwable cause) {
    super(message, cause);
  }
}
