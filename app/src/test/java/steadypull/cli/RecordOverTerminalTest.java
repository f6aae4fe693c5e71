package steadypull.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import steadypull.demo.bench.PseudoTerminal;

/** The whole way over a device that the operating system offers as a serial port. */
@Execution(ExecutionMode.CONCURRENT)
@Timeout(300)
class RecordOverTerminalTest {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final String BENCH = "demo:cool-day?speed=2&start=120";

  @TempDir private Path folder;

  @BeforeEach
  void onlyWhereThereArePseudoTerminals() {
    assumeThat(System.getProperty("os.name").toLowerCase(Locale.ROOT))
        .as("pseudo terminals of Linux and macOS")
        .doesNotStartWith("windows");
  }

  /**
   * The adapter falls silent until that is said, so a slow machine waits longer and sees it too.
   */
  @Test
  void whatWasSaidDuringADriveOverASerialPortIsSaidAgainFromItsTrip() throws Exception {
    List<String> printed;
    String said;
    try (PseudoTerminal bench = PseudoTerminal.serve(BENCH);
        ChildProgram program =
            ChildProgram.start(folder, "record", "--port", bench.path(), "--vehicle", "Wattle 2")) {
      program.diagnosticLine(line -> line.contains("readings/s"));
      bench.setSilent(true);
      program.diagnosticLine(line -> line.contains("caution raised"));
      bench.setSilent(false);
      program.diagnosticLine(line -> line.contains("caution cleared"));
      program.askToEnd();
      printed = program.outputToTheEnd();
      said = program.diagnostics();
    }

    Desk desk = new Desk(folder);
    assertThat(printed).as(said).containsExactly(sealedTripWithAGap(desk, said));
    assertThat(replayed(desk, printed.getFirst())).isEqualTo(ToldAdvice.live(said));
  }

  @Test
  void aSerialPortIsProbedUpToTheVehicle() throws Exception {
    Desk.Answer probed;
    try (PseudoTerminal bench = PseudoTerminal.serve(BENCH)) {
      probed = new Desk(folder).type("ports", "--probe", bench.path());
    }

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

  private static String sealedTripWithAGap(Desk desk, String said) throws Exception {
    JsonNode trip = JSON.readTree(desk.type("trips", "--json").out()).get(0);
    assertThat(trip.get("sealed").asBoolean()).isTrue();
    assertThat(trip.get("gaps")).as(said).hasSize(1);
    return trip.get("id").asText();
  }
}
