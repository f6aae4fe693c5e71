package steadypull.adapter.link;

import com.fazecast.jSerialComm.SerialPort;
import java.time.Duration;
import java.util.Arrays;

/**
 * Moves bytes over an open serial port. Used by one thread at a time. The library tells a vanished
 * device by a negative count, and on some systems by a blocking read that returns at once with
 * nothing; both end the link here.
 */
final class SerialLink implements Link {
  /** How long one native read may block. POSIX counts in tenths of a second. */
  static final int READ_MILLISECONDS = 100;

  private static final int LARGEST_TAKE = 4096;
  private static final int EMPTY_HANDED_RETURNS = 50;

  private final String address;
  private final SerialPort port;
  private final Runnable onProof;
  private final byte[] buffer = new byte[LARGEST_TAKE];
  private final RateProof proof = new RateProof();

  SerialLink(String address, SerialPort port, Runnable onProof) {
    this.address = address;
    this.port = port;
    this.onProof = onProof;
  }

  @Override
  public String address() {
    return address;
  }

  @Override
  public void write(byte[] bytes) throws LinkException {
    int sent = port.writeBytes(bytes, bytes.length);
    if (sent != bytes.length) {
      throw gone("send to", "only " + Math.max(0, sent) + " of " + bytes.length + " bytes left");
    }
  }

  @Override
  public byte[] read(Duration patience) throws LinkException {
    return Arrays.copyOf(buffer, read(buffer, patience.toNanos()));
  }

  @Override
  public int read(byte[] into, long patienceNanos) throws LinkException {
    long deadline = System.nanoTime() + patienceNanos;
    int returnedAtOnce = 0;
    do {
      long before = System.nanoTime();
      int count =
          patienceNanos == 0 && port.bytesAvailable() == 0 ? 0 : port.readBytes(into, into.length);
      if (count < 0) {
        throw gone("read from", "the device no longer answers the system");
      }
      if (count > 0) {
        if (proof.isIn(into, count)) {
          onProof.run();
        }
        return count;
      }
      returnedAtOnce = isAtOnce(before) ? returnedAtOnce + 1 : 0;
      if (returnedAtOnce > EMPTY_HANDED_RETURNS) {
        throw gone("read from", "the device has hung up");
      }
    } while (System.nanoTime() < deadline);
    return 0;
  }

  private static boolean isAtOnce(long startNanoTime) {
    return System.nanoTime() - startNanoTime < READ_MILLISECONDS * 1_000_000L / 20;
  }

  private LinkException gone(String attempt, String found) {
    return new LinkException(
        address,
        attempt,
        found + " (system error " + port.getLastErrorCode() + ")",
        "Check the plug, the cable and the adapter's power.",
        null);
  }

  @Override
  public void close() {
    port.closePort();
  }
}
