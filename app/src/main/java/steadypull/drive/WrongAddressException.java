package steadypull.drive;

import org.jspecify.annotations.Nullable;

/** The address of a port or of a receiver is nobody's, or not of its form: nothing was opened. */
public final class WrongAddressException extends DriveException {
  WrongAddressException(String message, @Nullable Throwable cause) {
    super(message, cause);
  }
}
