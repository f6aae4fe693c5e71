package steadypull.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A stranger's drive, kept with its bytes, is looked at again at another desk. */
@Execution(ExecutionMode.CONCURRENT)
class RawCaptureTest {
  @TempDir private static Path folder;
  private static Desk desk;
  private static Desk.Answer recorded;
  private static Path capture;

  @BeforeAll
  static void recordWithRawBytes() throws Exception {
    desk = new Desk(folder.resolve("library"));
    // The port vanishes on the way and comes back.
    recorded = record(desk, "demo:cool-day?speed=max&fault=vanish@40-55", "--raw");
    try (Stream<Path> files = Files.list(folder.resolve("library/captures"))) {
      capture = files.findFirst().orElseThrow();
    }
  }

  @Test
  void theCaptureLiesBesideTheLibraryAndIsNamed() throws Exception {
    assertThat(recorded.status()).as(recorded.err()).isZero();
    assertThat(recorded.err()).contains("raw capture: " + capture);
    assertThat(Files.readAllLines(capture))
        .startsWith("steadypull-capture 1", "address demo:cool-day?speed=max&fault=vanish@40-55")
        .anyMatch(line -> line.contains(" sent 0902\\r"))
        .anyMatch(line -> line.contains(" lost "))
        .anyMatch(line -> line.contains(" refused "));
  }

  @Test
  void theReplayedDriveTellsTheSameValues() throws Exception {
    Desk.Answer replayed = record(desk, "capture:" + capture + "?speed=max");
    assertThat(replayed.status()).as(replayed.err()).isZero();

    List<String> original = table(desk, recorded.out().strip());
    List<String> again = table(desk, replayed.out().strip());
    assertThat(again.getFirst()).isEqualTo(original.getFirst());
    assertThat(again).hasSameSizeAs(original);
    for (int row = 1; row < again.size(); row++) {
      assertThat(values(again.get(row))).isEqualTo(values(original.get(row)));
      // Sending takes no time in a replay; that is some characters at 115200 baud.
      assertThat(seconds(again.get(row))).isCloseTo(seconds(original.get(row)), within(0.05));
    }
    assertThat(replayed.err()).contains("link lost");
  }

  // Somebody else's problem: another library, another vehicle, another pace.
  @ParameterizedTest
  @CsvSource({"polite, polite", "full, polite", "full, full", "polite, full"})
  void aStrangersReplayTellsEveryChannelWithTheValuesOfThen(String then, String now)
      throws Exception {
    Desk owner = new Desk(folder.resolve("owner-" + then + now));
    Desk.Answer first = record(owner, "demo:cool-day?speed=max", "--raw", "--pace", then);
    Path file = folder.resolve("owner-" + then + now + "/captures/20260715T174512Z.capture");
    Desk stranger = new Desk(folder.resolve("stranger-" + then + now));

    Desk.Answer again =
        stranger.type(
            "record",
            "--port",
            "capture:" + file + "?speed=max",
            "--vehicle",
            "Test",
            "--pace",
            now,
            "--for",
            "90s");
    assertThat(again.status()).as(again.err()).isZero();

    assertThat(Files.readString(file)).contains("\nvehicle {").doesNotContain("Wattle 2");
    List<String> original = table(owner, first.out().strip());
    List<String> replayed = table(stranger, again.out().strip());
    assertThat(replayed.getFirst()).isEqualTo(original.getFirst());
    List<String> headers = List.of(original.getFirst().split(",", -1));
    for (int column = 1; column < headers.size(); column++) {
      assertThat(cells(replayed, column))
          .as(headers.get(column))
          .hasSizeGreaterThan(Math.min(cells(original, column).size(), 90) / 2);
    }
  }

  private static List<String> cells(List<String> table, int column) {
    return table.stream()
        .skip(1)
        .map(row -> row.split(",", -1)[column])
        .filter(cell -> !cell.isEmpty())
        .toList();
  }

  @Test
  void theReplayedPortIsProbedLikeAnyOther() {
    Desk.Answer probed = desk.type("ports", "--probe", "capture:" + capture + "?speed=max");

    assertThat(probed.status()).as(probed.err()).isZero();
    assertThat(probed.out()).contains("The vehicle's bus answers", "7E8");
  }

  @Test
  void theVehiclesNumberIsMaskedUnlessAskedFor() throws Exception {
    Desk other = new Desk(folder.resolve("kept"));
    assertThat(record(other, "demo:cool-day?speed=max", "--raw-with-vin").status()).isZero();
    Path kept = folder.resolve("kept/captures").resolve("20260715T174512Z.capture");

    assertThat(vinLines(kept)).isNotEmpty().isNotEqualTo(vinLines(capture));
    // "STEADY" in hex: what stands in place of the number.
    assertThat(String.join("", vinLines(capture))).contains("535445");
    assertThat(String.join("", vinLines(kept))).doesNotContain("535445");
  }

  @Test
  void aFileThatIsNoCaptureIsRefusedInWords() throws Exception {
    Path file = Files.writeString(folder.resolve("some.txt"), "hello\n");
    Desk.Answer answer = record(desk, "capture:" + file);

    assertThat(answer.status()).isEqualTo(1);
    assertThat(answer.err()).contains("steadypull-capture 1", "record --raw");
  }

  private static Desk.Answer record(Desk desk, String port, String... options) {
    return desk.type(
        Stream.concat(
                Stream.of("record", "--port", port, "--vehicle", "Wattle 2", "--for", "90s"),
                Stream.of(options))
            .toArray(String[]::new));
  }

  private static List<String> table(Desk desk, String trip) throws Exception {
    Path file = folder.resolve("trip.csv");
    Files.deleteIfExists(file);
    Desk.Answer answer = desk.type("export", trip, "--to", file.toString());
    assertThat(answer.status()).as(answer.err()).isZero();
    return Files.readAllLines(file);
  }

  private static String values(String row) {
    return row.substring(row.indexOf(','));
  }

  private static double seconds(String row) {
    return Double.parseDouble(row.substring(0, row.indexOf(',')));
  }

  /** What was heard between the question for the number and the next. */
  private static List<String> vinLines(Path file) throws Exception {
    return Files.readAllLines(file).stream()
        .dropWhile(line -> !line.endsWith(" sent 0902\\r"))
        .skip(1)
        .takeWhile(line -> !line.contains(" sent "))
        .map(line -> line.replaceFirst("^\\S+ ", ""))
        .toList();
  }
}
