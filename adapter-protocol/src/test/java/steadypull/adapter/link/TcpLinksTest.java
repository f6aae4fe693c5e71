package steadypull.adapter.link;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TcpLinksTest {
  private static final Duration PATIENCE = Duration.ofSeconds(10);

  private final TcpLinks links = new TcpLinks();

  @Test
  void bytesGoBothWays() throws IOException {
    try (ServerSocket server = new ServerSocket(0, 1, InetAddress.getLoopbackAddress());
        Link link = source(server.getLocalPort()).open();
        Socket adapter = server.accept()) {
      assertThat(link.read(Duration.ZERO)).isEmpty();
      link.write("ATI\r".getBytes(StandardCharsets.US_ASCII));
      assertThat(adapter.getInputStream().readNBytes(4)).asString().isEqualTo("ATI\r");

      adapter.getOutputStream().write(new byte[] {'O', 'K', 0, '>'});

      assertThat(readAll(link, 4)).containsExactly('O', 'K', 0, '>');
    }
  }

  // Whoever opens a real port gets it behind the gate.
  @Test
  void nothingThatDoesMoreThanReadLeavesThroughASocket() throws IOException {
    try (ServerSocket server = new ServerSocket(0, 1, InetAddress.getLoopbackAddress());
        Link link = source(server.getLocalPort()).open();
        Socket adapter = server.accept()) {
      assertThatThrownBy(() -> link.write("04\r".getBytes(StandardCharsets.US_ASCII)))
          .isInstanceOf(RefusedRequestException.class);
      link.write("ATI\r".getBytes(StandardCharsets.US_ASCII));

      assertThat(adapter.getInputStream().readNBytes(4)).asString().isEqualTo("ATI\r");
    }
  }

  // A drive that is ended must not wait for an adapter that is out of reach.
  @Test
  void interruptedThreadDoesNotWaitForAnAdapter() throws IOException {
    try (ServerSocket server = new ServerSocket(0, 1, InetAddress.getLoopbackAddress());
        Link link = source(server.getLocalPort()).open()) {
      LinkSource source = source(server.getLocalPort());
      Thread.currentThread().interrupt();
      assertThatThrownBy(source::open).isInstanceOf(LinkException.class);
      assertThatThrownBy(() -> link.read(PATIENCE)).isInstanceOf(LinkException.class);
      assertThat(Thread.interrupted()).isTrue();
    }
  }

  private static byte[] readAll(Link link, int count) throws LinkException {
    byte[] all = {};
    while (all.length < count) {
      byte[] came = link.read(PATIENCE);
      assertThat(came).as("bytes within " + PATIENCE).isNotEmpty();
      byte[] longer = java.util.Arrays.copyOf(all, all.length + came.length);
      System.arraycopy(came, 0, longer, all.length, came.length);
      all = longer;
    }
    return all;
  }

  @Test
  void otherSideThatClosesIsTold() throws IOException {
    try (ServerSocket server = new ServerSocket(0, 1, InetAddress.getLoopbackAddress());
        Link link = source(server.getLocalPort()).open()) {
      server.accept().close();

      assertThatThrownBy(() -> link.read(PATIENCE))
          .isInstanceOf(LinkException.class)
          .hasMessageContaining("closed the connection")
          .hasMessageContaining("Check the adapter's power");
    }
  }

  @Test
  void refusedConnectionIsToldWithAddressAndRemedy() throws IOException {
    int freePort;
    try (ServerSocket server = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      freePort = server.getLocalPort();
    }
    LinkSource source = source(freePort);

    assertThatThrownBy(source::open)
        .isInstanceOf(LinkException.class)
        .hasMessageContaining("tcp://127.0.0.1:" + freePort)
        .hasMessageContaining("refused")
        .hasMessageContaining("Check that this device is in the adapter's network");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "tcp:",
        "tcp://",
        "tcp://host",
        "tcp://host:",
        "tcp://host:0",
        "tcp://host:65536",
        "tcp://host:99999999",
        "tcp://:123",
        "tcp://ho st:123",
        "tcp://host:12a",
        "tcp:host:123"
      })
  void malformedAddressIsRefusedWithTheForm(String address) {
    assertThatThrownBy(() -> links.find(address))
        .isInstanceOf(LinkException.class)
        .hasMessageContaining(address)
        .hasMessageContaining("tcp://host:port");
  }

  @Test
  void otherKindsOfAddressAreLeftToOthers() throws LinkException {
    assertThat(links.find("/dev/ttyUSB0")).isEmpty();
    assertThat(links.find("demo:long-hot-grade")).isEmpty();
    assertThat(links.find("tcp://[::1]:123")).isPresent();
  }

  private LinkSource source(int port) throws LinkException {
    return links.find("tcp://127.0.0.1:" + port).orElseThrow();
  }
}
