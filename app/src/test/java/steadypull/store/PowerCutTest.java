package steadypull.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import steadypull.channel.Sample;
import steadypull.store.TripSummary.Gap;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.Vehicle;

/**
 * The power is cut at any moment. What was synced is there; of what was being written, the
 * write-ahead log may end anywhere, in the middle of a frame or in rubbish (SQLite's own crash
 * tests assume no more of a disk: https://www.sqlite.org/testing.html, section 3.3 "Crash
 * Testing").
 */
@Execution(ExecutionMode.CONCURRENT)
class PowerCutTest {
  private static final int SAMPLES_A_SECOND = 50;
  private static final int SECTOR_OCTETS = 512;

  /** Nothing arrives for this long after the fifth second, so that the trip has a gap. */
  private static final long SILENCE_MICROS = 30_000_000;

  @TempDir Path place;

  @Test
  void aLogCutAtAnySectorOpensWithEverySecondThatWasSynced() throws Exception {
    Recording recording = record(7);
    for (int end = 0; end <= recording.log.length; end += SECTOR_OCTETS) {
      assertOpens(recording, Arrays.copyOf(recording.log, end), end);
    }
  }

  @Test
  void aLogThatEndsInRubbishOpensWithEverySecondThatWasSynced() throws Exception {
    assertTornLogsOpen(new SplittableRandom(17), record(6), 25);
  }

  @Test
  @Tag("soak")
  void aThousandTornLogsOpenWithEverySecondThatWasSynced() throws Exception {
    assertTornLogsOpen(new SplittableRandom(18), record(120), 1_000);
  }

  /**
   * While the log is copied into the file, any page of it may be on the disk already, or not yet.
   */
  @Test
  void aCheckpointThatWasCutAnywhereDoesNoHarm() throws Exception {
    SplittableRandom random = new SplittableRandom(20);
    Recording recording = record(7);
    for (int cut = 0; cut < 20; cut++) {
      byte[] mixed = recording.file.clone();
      for (int from = 0; from < mixed.length; from += SECTOR_OCTETS) {
        if (random.nextBoolean()) {
          System.arraycopy(recording.fileLater, from, mixed, from, SECTOR_OCTETS);
        }
      }
      Recording torn =
          new Recording(
              recording.tripId,
              mixed,
              recording.log,
              recording.index,
              recording.fileLater,
              recording.logOctets);
      assertOpens(torn, torn.log, torn.log.length);
    }
  }

  @Test
  void aStaleOrMissingIndexOfTheLogDoesNoHarm() throws Exception {
    Recording recording = record(6);
    byte[] rubbish = new byte[32_768];
    new SplittableRandom(19).nextBytes(rubbish);

    assertOpens(recording, recording.log, recording.log.length, rubbish);
    assertOpens(recording, recording.log, recording.log.length, recording.index);
  }

  private void assertTornLogsOpen(SplittableRandom random, Recording recording, int cuts)
      throws Exception {
    for (int cut = 0; cut < cuts; cut++) {
      int synced = random.nextInt(recording.log.length);
      byte[] torn = recording.log.clone();
      byte[] rubbish = new byte[random.nextInt(20_000)];
      random.nextBytes(rubbish);
      Arrays.fill(torn, synced, torn.length, (byte) 0);
      int written = Math.min(rubbish.length, torn.length - synced);
      System.arraycopy(rubbish, 0, torn, synced, written);
      assertOpens(recording, torn, synced);
    }
  }

  private void assertOpens(Recording recording, byte[] log, int syncedOctets) throws Exception {
    assertOpens(recording, log, syncedOctets, new byte[0]);
  }

  private void assertOpens(Recording recording, byte[] log, int syncedOctets, byte[] index)
      throws Exception {
    Path folder = Files.createTempDirectory(place, "cut");
    Files.write(folder.resolve("library.sqlite"), recording.file);
    Files.write(folder.resolve("library.sqlite-wal"), log);
    if (index.length > 0) {
      Files.write(folder.resolve("library.sqlite-shm"), index);
    }
    int synced = recording.samplesIn(syncedOctets);
    try (TripLibrary library = TripLibrary.open(folder)) {
      List<TripEntry> entries = new ArrayList<>();
      TripSummary trip = library.find(recording.tripId);
      library.replay(trip.id(), entries::add);
      // The last entry says that the trip was left behind.
      entries.removeLast();

      assertThat(entries).as("cut at %d", syncedOctets).hasSizeGreaterThanOrEqualTo(synced);
      assertThat(entries).isEqualTo(expected(entries.size()));
      assertThat(trip.sealed()).isTrue();
      assertThat(library.recovered()).containsExactly(trip.id());
      assertThat(trip.gaps())
          .isEqualTo(
              entries.size() > 5 * SAMPLES_A_SECOND ? List.of(new Gap(4.98, 35.0)) : List.of());
    }
    assertThat(LibraryCheck.check(folder)).isEqualTo(CheckReport.ok(1));
  }

  private static List<TripEntry> expected(int count) {
    return LongStream.range(0, count)
        .<TripEntry>mapToObj(number -> new TripEntry.OfSample(sample(number)))
        .toList();
  }

  private static Sample sample(long number) {
    var sample = KilledRecorder.sample(number);
    return number < 5 * SAMPLES_A_SECOND
        ? sample
        : new Sample(sample.channel(), sample.timeMicros() + SILENCE_MICROS, sample.value());
  }

  /** Records, one commit a second, and takes the files away as the power does. */
  private Recording record(int seconds) throws Exception {
    Path folder = Files.createTempDirectory(place, "recorded");
    Path file = folder.resolve("library.sqlite");
    NewTrip trip =
        new NewTrip(
            Vehicle.unknown("Wattle 2", CoolingLayout.AIR_TO_AIR),
            Instant.parse("2026-07-15T17:45:12Z"),
            "",
            "test",
            "0.1.0");
    try (TripLibrary library = TripLibrary.open(folder);
        TripRecorder recorder = library.begin(trip)) {
      // From here on everything is in the log only.
      recorder.pragma("wal_checkpoint(truncate)");
      recorder.pragma("wal_autocheckpoint = 0");
      List<Integer> logOctets = new ArrayList<>();
      for (int second = 0; second < seconds; second++) {
        long first = (long) second * SAMPLES_A_SECOND;
        for (long number = first; number < first + SAMPLES_A_SECOND; number++) {
          recorder.append(sample(number));
        }
        recorder.commit(sample(first + SAMPLES_A_SECOND - 1).timeMicros());
        logOctets.add((int) Files.size(LibraryFile.logOf(file)));
      }
      return Recording.of(recorder, file, logOctets);
    }
  }

  /**
   * What lay on the disk.
   *
   * @param file before anything of the log was copied into it
   * @param fileLater after everything was
   * @param logOctets how long the log was after each second's commit
   */
  @SuppressWarnings("ArrayRecordComponent") // never compared
  private record Recording(
      String tripId,
      byte[] file,
      byte[] log,
      byte[] index,
      byte[] fileLater,
      List<Integer> logOctets) {
    static Recording of(TripRecorder recorder, Path file, List<Integer> logOctets)
        throws IOException {
      byte[] before = Files.readAllBytes(file);
      byte[] log = Files.readAllBytes(LibraryFile.logOf(file));
      byte[] index = Files.readAllBytes(file.resolveSibling("library.sqlite-shm"));
      recorder.pragma("wal_checkpoint(passive)");
      return new Recording(
          recorder.tripId(), before, log, index, Files.readAllBytes(file), logOctets);
    }

    /** How many samples were committed by the time the log was that long. */
    int samplesIn(int octets) {
      return SAMPLES_A_SECOND * (int) logOctets.stream().filter(it -> it <= octets).count();
    }
  }
}
