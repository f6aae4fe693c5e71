package steadypull.adapter.link;

import java.time.Duration;

/** An open two-way stream of bytes to an adapter. Used by one thread at a time. */
public interface Link extends AutoCloseable {
  /** No read takes more bytes than this. */
  int MOST_AT_ONCE = 65_536;

  /** The port or host, as the user wrote it. */
  String address();

  /**
   * Sends all bytes, or fails. The array is the caller's again on return.
   *
   * @throws LinkException if the other side has gone
   */
  void write(byte[] bytes) throws LinkException;

  /**
   * Waits for bytes and takes what has come.
   *
   * @param patience how long to wait for the first byte, on this link's clock; zero or more
   * @return the bytes that have come, in order, at most {@link #MOST_AT_ONCE}; empty when none came
   *     in time
   * @throws LinkException if the other side has gone
   */
  byte[] read(Duration patience) throws LinkException;

  /**
   * Waits for bytes and puts what has come into an array.
   *
   * @param into room for {@link #MOST_AT_ONCE} bytes
   * @param patienceNanos how long to wait for the first byte, on this link's clock; zero or more
   * @return how many bytes have come; 0 when none came in time
   * @throws LinkException if the other side has gone
   */
  default int read(byte[] into, long patienceNanos) throws LinkException {
    byte[] came = read(Duration.ofNanos(patienceNanos));
    System.arraycopy(came, 0, into, 0, came.length);
    return came.length;
  }

  /** Lets go of the port. Closing twice is harmless. */
  @Override
  void close();
}
