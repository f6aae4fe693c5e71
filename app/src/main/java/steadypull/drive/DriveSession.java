package steadypull.drive;

/** A running live drive. */
public interface DriveSession extends DriveControls, AutoCloseable {

  /** Ends the drive, seals the trip and waits until both are done. Closing twice is harmless. */
  @Override
  void close();
}
