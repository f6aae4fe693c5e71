package steadypull.demo.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assumptions.assumeThat;

import com.fazecast.jSerialComm.SerialPort;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import steadypull.adapter.link.LinkException;

/** The same bench over TCP and over a real pseudo terminal, in the machine's time. */
@Timeout(300)
class BenchServingTest {
  /** An answer that has not come by then never will. */
  private static final int LOST_MILLIS = 30_000;

  private static final String ADDRESS = "demo:long-hot-grade?speed=50&start=400";

  @Test
  void clientsOneAfterTheOtherTalkToTheSameAdapter() throws Exception {
    try (BenchServer server = BenchServer.serve(ADDRESS, 0)) {
      assertThat(overTcp(server, "ATE0")).isEqualTo("ATE0\rOK\r\r>");
      assertThat(overTcp(server, "ATI")).isEqualTo(AtCommands.IDENTITY + "\r\r>");
    }
  }

  @Test
  void anAnswerGoesToTheClientThatAskedHoweverSoonItFollowsAnother() throws Exception {
    try (BenchServer server = BenchServer.serve("demo:cool-day?speed=1000&seed=1", 0)) {
      assertThat(overTcp(server, "ATE0")).endsWith(">");
      for (int client = 0; client < 2000; client++) {
        assertThat(overTcp(server, "ATI")).isEqualTo(AtCommands.IDENTITY + "\r\r>");
      }
    }
  }

  /** Settings of vehicle and adapter reach a served bench as they reach one in memory. */
  @Test
  void servedBenchPlaysWhatItsAddressSays() throws Exception {
    try (BenchServer older = BenchServer.serve(ADDRESS + "&protocol=5&adapter=no-voltage", 0)) {
      assertThat(overTcp(older, "ATRV")).endsWith("?\r\r>");
      assertThat(overTcp(older, "ATTP5")).endsWith("OK\r\r>");
      assertThat(overTcp(older, "010D")).contains("BUS INIT: OK\r", "41 0D");
    }
    try (BenchServer serial = BenchServer.serve(ADDRESS + "&adapter=serial-can&traffic=50", 0);
        Socket socket = new Socket(InetAddress.getLoopbackAddress(), serial.port())) {
      socket.getOutputStream().write("S6\rO\r".getBytes(StandardCharsets.US_ASCII));
      assertThat(new String(socket.getInputStream().readNBytes(30), StandardCharsets.US_ASCII))
          .startsWith("\r\rt0");
    }
  }

  @Test
  void takenPortIsRefusedWithItsNumber() throws Exception {
    try (BenchServer server = BenchServer.serve(ADDRESS, 0)) {
      assertThatThrownBy(() -> BenchServer.serve(ADDRESS, server.port()))
          .isInstanceOf(LinkException.class)
          .hasMessageContaining(String.valueOf(server.port()));
    }
  }

  @Test
  void pseudoTerminalIsASerialPortLikeAnyOther() throws Exception {
    assumeThat(System.getProperty("os.name").toLowerCase(Locale.ROOT))
        .as("pseudo terminals are a matter of Linux and macOS")
        .doesNotContain("windows");
    try (PseudoTerminal terminal = PseudoTerminal.serve(ADDRESS)) {
      SerialPort port = SerialPort.getCommPort(terminal.path());
      port.setBaudRate(115_200);
      port.setComPortTimeouts(SerialPort.TIMEOUT_READ_SEMI_BLOCKING, 0, 0);
      assertThat(port.openPort()).as("open %s", terminal.path()).isTrue();
      try {
        InputStream in = port.getInputStream();
        OutputStream out = port.getOutputStream();
        assertThat(ask(in, out, "ATE0")).isEqualTo("ATE0\rOK\r\r>");
        assertThat(ask(in, out, "ATS0")).isEqualTo("OK\r\r>");
        assertThat(ask(in, out, "010D1")).matches("SEARCHING...\r410D(59|5A)\r\r>");
        assertThat(ask(in, out, "0902")).startsWith("014\r0:490201315A5A\r");
      } finally {
        port.closePort();
      }
    }
  }

  private static String overTcp(BenchServer server, String command) throws IOException {
    try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), server.port())) {
      socket.setSoTimeout(LOST_MILLIS);
      return ask(socket.getInputStream(), socket.getOutputStream(), command);
    }
  }

  private static String ask(InputStream in, OutputStream out, String command) throws IOException {
    out.write((command + "\r").getBytes(StandardCharsets.US_ASCII));
    out.flush();
    StringBuilder reply = new StringBuilder();
    while (reply.indexOf(">") < 0) {
      reply.append((char) in.read());
    }
    return reply.toString();
  }
}
