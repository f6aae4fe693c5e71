package steadypull.report;

/** A form could not be made; the message is for the user and says what to do. */
public final class ReportException extends Exception {
  ReportException(String message) {
    super(message);
  }

  ReportException(String message, Throwable cause) {
    super(message, cause);
  }
}
