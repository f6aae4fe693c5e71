package steadypull.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadypull.demo.bench.PseudoTerminal;

/** The whole way over a device that the operating system offers as a serial port. */
class RecordOverTerminalTest {
  private static final ObjectMapper JSON = new ObjectMapper();

  @TempDir private Path folder;

  /**
   * The adapter falls silent for a while, so that there is something to be said. The bench's time
   * is the machine's here: the silence begins late and lasts twice the gap that is looked for, so
   * that a slow machine has connected before it and still sees it.
   */
  @Test
  void whatWasSaidDuringADriveOverASerialPortIsSaidAgainFromItsTrip() throws Exception {
    assumeThat(System.getProperty("os.name").toLowerCase(Locale.ROOT))
        .as("pseudo terminals of Linux and macOS")
        .doesNotStartWith("windows");
    Desk desk = new Desk(folder.resolve("library"));
    Desk.Answer recorded;
    Desk.Answer probed;
    try (PseudoTerminal bench =
        PseudoTerminal.serve("demo:cool-day?start=120&fault=silent@12-22")) {
      recorded =
          desk.type("record", "--port", bench.path(), "--vehicle", "Wattle 2", "--for", "28s");
      probed = desk.type("ports", "--probe", bench.path());
    }

    assertThat(recorded.status()).as(recorded.err()).isZero();
    List<String> live = ToldAdvice.live(recorded.err());
    assertThat(live).as(recorded.err()).anyMatch(line -> line.contains("caution raised"));
    assertThat(live).as(recorded.err()).anyMatch(line -> line.contains("caution cleared"));
    assertThat(replayed(desk, recorded.line())).isEqualTo(live);
    assertThat(sealedTripWithAGap(desk)).isEqualTo(recorded.line());
    assertThat(probed.status()).isZero();
    assertThat(probed.out()).contains("ISO 15765-4", "7E8").doesNotContain(" -- ");
  }

  private static List<String> replayed(Desk desk, String trip) throws Exception {
    List<JsonNode> lines = new ArrayList<>();
    for (String line : desk.type("advise", trip).lines()) {
      lines.add(JSON.readTree(line));
    }
    return ToldAdvice.replayed(lines);
  }

  private static String sealedTripWithAGap(Desk desk) throws Exception {
    JsonNode trip = JSON.readTree(desk.type("trips", "--json").out()).get(0);
    assertThat(trip.get("sealed").asBoolean()).isTrue();
    assertThat(trip.get("gaps")).hasSize(1);
    return trip.get("id").asText();
  }
}
