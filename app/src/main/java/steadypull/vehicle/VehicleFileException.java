package steadypull.vehicle;

/**
 * A vehicle or rig file that cannot be taken. The message names file, line, column and field, what
 * was expected, what was found and what to do.
 */
public final class VehicleFileException extends Exception {
  /** With a message in four parts. */
  public VehicleFileException(String message) {
    super(message);
  }

  /** With a message in four parts and the fault behind it. */
  public VehicleFileException(String message, Throwable cause) {
    super(message, cause);
  }
}
