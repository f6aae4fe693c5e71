package steadypull.adapter.link;

import java.time.Duration;

/** An open two-way stream of bytes to an adapter. Used by one thread at a time. */
public interface Link extends AutoCloseable {

  /** The port or host, as the user wrote it. */
  String address();

  /**
   * Sends all bytes, or fails.
   *
   * @throws LinkException if the other side has gone
   */
  void write(byte[] bytes) throws LinkException;

  /**
   * Waits for bytes and takes what has come.
   *
   * @param patience how long to wait for the first byte, on this link's clock; zero or more
   * @return the bytes that have come, in order; empty when none came in time
   * @throws LinkException if the other side has gone
   */
  byte[] read(Duration patience) throws LinkException;

  /** Lets go of the port. Closing twice is harmless. */
  @Override
  void close();
}
