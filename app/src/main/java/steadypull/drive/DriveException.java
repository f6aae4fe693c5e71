package steadypull.drive;

import org.jspecify.annotations.Nullable;

/** A drive could not begin; the message says what was tried, found and what to do. */
public sealed class DriveException extends Exception permits WrongAddressException {
  /** Carries one clear message and the cause underneath, if there is one. */
  public DriveException(String message, @Nullable Throwable cause) {
    super(message, cause);
  }
}
