package steadypull.cli;

/** The task failed; the message is for the user and says why. */
final class CommandFailure extends Exception {
  CommandFailure(String message, Throwable cause) {
    super(message, cause);
  }

  CommandFailure(String message) {
    super(message);
  }
}
