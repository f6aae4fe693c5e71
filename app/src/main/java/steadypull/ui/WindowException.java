package steadypull.ui;

/** The window could not open; the message says what is missing and what to do. */
public final class WindowException extends Exception {
  WindowException(String message, Throwable cause) {
    super(message, cause);
  }
}
