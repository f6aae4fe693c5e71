package steadypull.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardWatchEventKinds;
import java.nio.file.WatchKey;
import java.nio.file.WatchService;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;

/** The program as a process: told to end, killed, and without a display. */
@Execution(ExecutionMode.CONCURRENT)
class EndedFromOutsideTest {
  @TempDir private Path folder;

  @BeforeEach
  void onlyWhereProcessesCanBeAskedToEnd() {
    assumeThat(System.getProperty("os.name").toLowerCase(Locale.ROOT)).startsWith("linux");
  }

  private JsonNode onlyTrip() throws Exception {
    JsonNode trips = new ObjectMapper().readTree(new Desk(folder).type("trips", "--json").out());
    assertThat(trips).hasSize(1);
    return trips.get(0);
  }

  private ChildProgram recording() throws Exception {
    ChildProgram program =
        ChildProgram.start(
            folder, "record", "--port", "demo:cool-day?speed=20", "--vehicle", "Wattle 2");
    // Figures come every two seconds of the day: a slow machine prints the first ones late.
    program.diagnosticLine(line -> line.contains("readings/s") && !line.startsWith("0:00:0"));
    return program;
  }

  @Test
  void aRecorderThatIsAskedToEndSealsItsTripPrintsItsIdAndIsDone() throws Exception {
    List<String> printed;
    int status;
    try (ChildProgram program = recording()) {
      program.askToEnd();
      printed = program.outputToTheEnd();
      status = program.status();
    }

    JsonNode trip = onlyTrip();
    assertThat(trip.get("sealed").asBoolean()).isTrue();
    assertThat(printed).containsExactly(trip.get("id").asText());
    assertThat(status).isZero();
  }

  // A tablet that is shut down asks its programs to end.
  @Test
  @Timeout(300)
  void aWindowThatIsAskedToEndSealsItsTripAndIsDone() throws Exception {
    int status;
    try (WatchService changes = folder.getFileSystem().newWatchService();
        ChildProgram program =
            ChildProgram.startWindow(
                folder, "--port", "demo:cool-day?speed=20", "--vehicle", "Wattle 2")) {
      folder.register(changes, StandardWatchEventKinds.ENTRY_MODIFY);
      awaitTripOfSeconds(changes, 2);
      program.askToEnd();
      program.outputToTheEnd();
      status = program.status();
    }

    assertThat(onlyTrip().get("sealed").asBoolean()).isTrue();
    assertThat(status).isZero();
  }

  /** A window says nothing on the console: the library is asked whenever its files change. */
  private void awaitTripOfSeconds(WatchService changes, int seconds) throws Exception {
    while (tripSeconds() < seconds) {
      WatchKey change = changes.take();
      change.pollEvents();
      change.reset();
    }
  }

  private double tripSeconds() throws Exception {
    JsonNode trips = new ObjectMapper().readTree(new Desk(folder).type("trips", "--json").out());
    return trips.isEmpty() ? 0 : trips.get(0).get("duration_s").asDouble();
  }

  /** Durable at least once a second: what a dead battery leaves is a readable trip. */
  @Test
  void aRecorderThatIsKilledLeavesAReadableTrip() throws Exception {
    try (ChildProgram program = recording()) {
      program.kill();
      program.outputToTheEnd();
    }

    JsonNode trip = onlyTrip();
    assertThat(trip.get("sealed").asBoolean()).isFalse();
    assertThat(trip.get("duration_s").asDouble()).isGreaterThanOrEqualTo(9);
    Path table = folder.resolve("left.csv");
    assertThat(new Desk(folder).type("export", trip.get("id").asText(), "--to", table.toString()))
        .extracting(Desk.Answer::status)
        .isEqualTo(0);
    assertThat(Files.readAllLines(table)).hasSizeGreaterThan(20);

    // Who writes next brings the trip to its end, and says so.
    Desk.Answer noted = new Desk(folder).type("trip", trip.get("id").asText(), "--note", "cut");
    assertThat(noted.err()).contains(trip.get("id").asText());
    assertThat(onlyTrip().get("sealed").asBoolean()).isTrue();
  }

  @Test
  void withoutADisplayTheDriveRunsInTheTerminalAndLeavesPicturesByDayAndNight() throws Exception {
    List<String> printed;
    int status;
    try (ChildProgram program = ChildProgram.start(folder, "--port", "demo:dyno-pull?speed=max")) {
      printed = program.outputToTheEnd();
      status = program.status();
    }

    assertThat(status).isZero();
    assertThat(printed.getFirst()).contains("No display");
    assertThat(printed).anyMatch(line -> line.startsWith("Recorded as trip "));
    List<Path> pictures =
        printed.stream().filter(line -> line.endsWith(".png")).map(Path::of).toList();
    assertThat(pictures).anyMatch(picture -> picture.toString().endsWith("-day.png"));
    assertThat(pictures).anyMatch(picture -> picture.toString().endsWith("-night.png"));
    assertThat(pictures).allMatch(Files::isRegularFile);
  }

  @Test
  void withoutADisplayAndWithoutAPortTheWindowIsRefusedWithAWayOut() throws Exception {
    try (ChildProgram program = ChildProgram.start(folder)) {
      String said = program.diagnosticLine(line -> line.contains("window"));
      assertThat(said).contains("found none", "--port");
      assertThat(program.outputToTheEnd()).isEmpty();
      assertThat(program.status()).isEqualTo(1);
    }
  }
}
