package steadypull.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;

/** A drive with a satellite receiver beside the adapter, as it is tried at a desk. */
@Execution(ExecutionMode.CONCURRENT)
class RecordWithReceiverTest {
  @TempDir private Path folder;

  @Test
  void positionsAreKeptWithTheTripAndCanBeLeftOutOfAnExport() throws Exception {
    Desk desk = new Desk(folder.resolve("library"));
    Desk.Answer recorded = record(desk, "demo-receiver:cool-day?speed=40");
    assertThat(recorded.status()).as(recorded.err()).isZero();
    assertThat(recorded.err().lines().filter(line -> line.contains("position known")))
        .as("told when it is found, and again after a second without a fix")
        .hasSizeBetween(1, 4);

    List<String> table = export(desk, recorded.out().strip());
    assertThat(table.getFirst()).contains("latitude[deg]", "longitude[deg]", "altitude[m]");
    assertThat(export(desk, recorded.out().strip(), "--no-positions").getFirst())
        .doesNotContain("latitude", "longitude");
  }

  // Its absence is normal: one line, and the drive is as good as any.
  @Test
  void anAbsentReceiverIsOneQuietLine() throws Exception {
    Desk desk = new Desk(folder.resolve("library"));
    String nowhere = folder.resolve("no-such-device").toString();
    Desk.Answer recorded = record(desk, nowhere);

    assertThat(recorded.status()).isZero();
    assertThat(recorded.err()).containsOnlyOnce(nowhere).contains("there is no such port");
    assertThat(export(desk, recorded.out().strip()).getFirst()).doesNotContain("latitude");
  }

  private static Desk.Answer record(Desk desk, String receiver) {
    return desk.type(
        "record",
        "--port",
        "demo:cool-day?speed=40",
        "--receiver",
        receiver,
        "--vehicle",
        "Wattle 2",
        "--for",
        "60s");
  }

  private List<String> export(Desk desk, String trip, String... options) throws Exception {
    Path file = folder.resolve("trip.csv");
    Files.deleteIfExists(file);
    List<String> command = new ArrayList<>(List.of("export", trip, "--to", file.toString()));
    command.addAll(List.of(options));
    Desk.Answer answer = desk.type(command.toArray(String[]::new));
    assertThat(answer.status()).as(answer.err()).isZero();
    return Files.readAllLines(file);
  }
}
