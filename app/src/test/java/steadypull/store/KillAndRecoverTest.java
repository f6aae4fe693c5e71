package steadypull.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a commit has promised is there after the recording program was killed at any moment. */
class KillAndRecoverTest {
  private static final int KILLS = 3;

  @TempDir Path folder;

  @Test
  void whatWasCommittedOutlivesAKill() throws Exception {
    SplittableRandom random = new SplittableRandom(9);
    for (int kill = 0; kill < KILLS; kill++) {
      Survivor survivor = recordAndKill(random.nextInt(1, 60));

      try (TripLibrary library = TripLibrary.open(folder)) {
        List<TripEntry> found = new ArrayList<>();
        library.replay(survivor.tripId, found::add);
        TripEntry last = found.removeLast();
        TripSummary summary = library.find(survivor.tripId);

        assertThat(found).as("seed 9, kill %d", kill).isEqualTo(expected(found.size()));
        assertThat(found.size() - 1L).isGreaterThanOrEqualTo(survivor.lastPromised);
        assertThat(summary.samples()).isEqualTo(found.size());
        assertThat(summary.sealed()).isTrue();
        assertThat(library.recovered()).containsExactly(survivor.tripId);
        assertThat(last)
            .isEqualTo(
                new TripEntry.OfEvent(
                    new TripEvent(
                        found.getLast().timeMicros(),
                        TripEvent.Kind.RECORDING,
                        LeftBehind.DETAIL)));
        assertThat(summary.durationSeconds()).isEqualTo(found.getLast().timeMicros() / 1e6);
      }
    }
  }

  private Survivor recordAndKill(int commits) throws IOException, InterruptedException {
    Process child =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "--enable-native-access=ALL-UNNAMED",
                "-cp",
                System.getProperty("java.class.path"),
                KilledRecorder.class.getName(),
                folder.toString())
            .redirectError(ProcessBuilder.Redirect.INHERIT)
            .start();
    try (BufferedReader lines = child.inputReader()) {
      String tripId = next(lines);
      long promised = -1;
      for (int commit = 0; commit < commits; commit++) {
        promised = Long.parseLong(next(lines));
      }
      return new Survivor(tripId, promised);
    } finally {
      // SIGKILL on systems that have it: no hook, no close, no flush.
      child.destroyForcibly().waitFor();
    }
  }

  private static String next(BufferedReader lines) throws IOException {
    String line = lines.readLine();
    assertThat(line).as("what the recording program says").isNotNull();
    return String.valueOf(line);
  }

  private static List<TripEntry> expected(int count) {
    return LongStream.range(0, count)
        .<TripEntry>mapToObj(number -> new TripEntry.OfSample(KilledRecorder.sample(number)))
        .toList();
  }

  private record Survivor(String tripId, long lastPromised) {}
}
