package steadypull.adapter.link;

import java.io.IOException;
import java.net.Socket;
import java.net.SocketTimeoutException;
import java.time.Duration;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/** Moves bytes over an open connection. Used by one thread; closing is allowed from any. */
final class TcpLink implements Link {
  private static final int LARGEST_TAKE = 4096;

  private final String address;
  private final Socket socket;

  TcpLink(String address, Socket socket) {
    this.address = address;
    this.socket = socket;
  }

  @Override
  public String address() {
    return address;
  }

  @Override
  public void write(byte[] bytes) throws LinkException {
    try {
      socket.getOutputStream().write(bytes);
      socket.getOutputStream().flush();
    } catch (IOException e) {
      throw gone("send to", e.getMessage(), e);
    }
  }

  @Override
  public byte[] read(Duration patience) throws LinkException {
    byte[] buffer = new byte[LARGEST_TAKE];
    return Arrays.copyOf(buffer, read(buffer, patience.toNanos()));
  }

  @Override
  public int read(byte[] into, long patienceNanos) throws LinkException {
    try {
      if (patienceNanos == 0 && socket.getInputStream().available() == 0) {
        return 0;
      }
      long millis = patienceNanos / 1_000_000;
      socket.setSoTimeout(Math.clamp(millis, 1, Integer.MAX_VALUE));
      return take(into);
    } catch (SocketTimeoutException nothingCame) {
      return 0;
    } catch (LinkException e) {
      throw e;
    } catch (IOException e) {
      throw gone("read from", e.getMessage(), e);
    }
  }

  private int take(byte[] into) throws IOException {
    int count = socket.getInputStream().read(into);
    if (count < 0) {
      throw gone("read from", "the other side closed the connection", null);
    }
    return count;
  }

  private LinkException gone(String attempt, @Nullable String found, @Nullable Throwable cause) {
    return new LinkException(
        address,
        attempt,
        "the connection is lost (" + found + ")",
        "Check the adapter's power and that this device is still in its network.",
        cause);
  }

  @Override
  public void close() {
    release(socket);
  }

  /** Lets go of a socket; a failure while closing leaves nothing that could be done. */
  static void release(Socket socket) {
    try {
      socket.close();
    } catch (IOException nothingLeftToRelease) {
      // The descriptor is given back even when closing reports an error.
      return;
    }
  }
}
