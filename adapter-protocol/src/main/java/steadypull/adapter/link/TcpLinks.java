package steadypull.adapter.link;

import java.io.IOException;
import java.net.ConnectException;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.net.SocketTimeoutException;
import java.net.UnknownHostException;
import java.nio.channels.SocketChannel;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Knows {@code tcp://host:port}: adapters in the vehicle's own network. Immutable. */
public final class TcpLinks implements LinkProvider {
  private static final String SCHEME = "tcp:";
  private static final Pattern FORM =
      Pattern.compile("tcp://(\\[[0-9A-Fa-f:.]+]|[A-Za-z0-9._-]+):([0-9]{1,5})/?");
  private static final int CONNECT_MILLISECONDS = 3000;

  @Override
  public Optional<LinkSource> find(String address) throws LinkException {
    if (!address.startsWith(SCHEME)) {
      return Optional.empty();
    }
    Matcher form = FORM.matcher(address);
    int port = form.matches() ? Integer.parseInt(form.group(2)) : 0;
    if (port < 1 || port > 65_535) {
      throw new MalformedAddressException(
          address,
          "tcp://host:port with a port from 1 to 65535",
          "another form",
          "Write the adapter's address as its manual gives it, for example"
              + " tcp://192.168.0.10:1234.",
          null);
    }
    return Optional.of(new Source(address, form.group(1), port));
  }

  private record Source(String address, String host, int port) implements LinkSource {
    @Override
    public LinkClock clock() {
      return LinkClock.machine();
    }

    @Override
    public Link open() throws LinkException {
      try {
        // The socket of a channel, because an interrupt ends its connecting and reading at once.
        return connected(SocketChannel.open().socket());
      } catch (IOException e) {
        throw new LinkException(address, "connect to", found(e), remedy(e), e);
      }
    }

    private Link connected(Socket socket) throws IOException {
      try {
        socket.connect(new InetSocketAddress(host, port), CONNECT_MILLISECONDS);
        socket.setTcpNoDelay(true);
        return ReadOnlyGate.before(new TcpLink(address, socket));
      } catch (IOException e) {
        TcpLink.release(socket);
        throw e;
      }
    }

    private String found(IOException e) {
      return switch (e) {
        case UnknownHostException unknown -> "no machine named \"" + host + "\" is known";
        case SocketTimeoutException late ->
            "no answer within " + CONNECT_MILLISECONDS / 1000 + " s";
        case ConnectException refused -> "the connection was refused or there is no way there";
        default -> "the connection failed (" + e.getMessage() + ")";
      };
    }

    private String remedy(IOException e) {
      return e instanceof UnknownHostException
          ? "Check the spelling, or write the adapter's number, such as 192.168.0.10."
          : "Check that this device is in the adapter's network, that the adapter has power, that"
              + " port "
              + port
              + " is right and that no other program is using it.";
    }
  }
}
