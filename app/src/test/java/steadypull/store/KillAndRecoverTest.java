package steadypull.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;

/**
 * What a commit has promised is there after the recording program was killed at any moment. Commits
 * are of a twentieth of a long segment and more, so that many a kill falls where short segments are
 * being joined.
 */
@Execution(ExecutionMode.CONCURRENT)
class KillAndRecoverTest {
  private static final int KILLS = 20;
  private static final int SOAK_KILLS = 200;
  private static final int MOST_COMMITS = 30;
  private static final int MOST_SAMPLES = 70_000;
  private static final List<Integer> SAMPLES_PER_COMMIT = List.of(50, 1_700, 11_000, 33_000);

  @TempDir Path folder;

  @Test
  void whatWasCommittedOutlivesAKill() throws Exception {
    killAndRecover(new SplittableRandom(9), KILLS);
  }

  @Test
  @Tag("soak")
  void whatWasCommittedOutlivesManyKills() throws Exception {
    killAndRecover(new SplittableRandom(10), SOAK_KILLS);
  }

  private void killAndRecover(SplittableRandom random, int kills) throws Exception {
    for (int kill = 0; kill < kills; kill++) {
      int samplesPerCommit = SAMPLES_PER_COMMIT.get(kill % SAMPLES_PER_COMMIT.size());
      ChildRecorder child =
          recordAndKill(
              samplesPerCommit,
              random.nextInt(Math.min(MOST_COMMITS, MOST_SAMPLES / samplesPerCommit)));

      try (TripLibrary library = TripLibrary.open(folder)) {
        List<TripEntry> found = new ArrayList<>();
        library.replay(child.tripId(), found::add);
        TripEntry last = found.removeLast();
        TripSummary summary = library.find(child.tripId());
        long endMicros = found.isEmpty() ? 0 : found.getLast().timeMicros();

        assertThat(found).as("kill %d", kill).isEqualTo(expected(found.size()));
        assertThat(found.size() - 1L).isGreaterThanOrEqualTo(child.lastPromised());
        assertThat(summary.samples()).isEqualTo(found.size());
        assertThat(summary.sealed()).isTrue();
        assertThat(library.recovered()).containsExactly(child.tripId());
        assertThat(last)
            .isEqualTo(
                new TripEntry.OfEvent(
                    new TripEvent(endMicros, TripEvent.Kind.RECORDING, LeftBehind.DETAIL)));
        assertThat(summary.durationSeconds()).isEqualTo(endMicros / 1e6);
      }
    }
  }

  /** Killed at once after some commit was heard of: the next is under way, nobody knows how far. */
  private ChildRecorder recordAndKill(int samplesPerCommit, int commits) throws IOException {
    try (ChildRecorder child = ChildRecorder.start(folder, samplesPerCommit)) {
      child.awaitCommits(commits);
      return child;
    }
  }

  private static List<TripEntry> expected(int count) {
    return LongStream.range(0, count)
        .<TripEntry>mapToObj(number -> new TripEntry.OfSample(KilledRecorder.sample(number)))
        .toList();
  }
}
