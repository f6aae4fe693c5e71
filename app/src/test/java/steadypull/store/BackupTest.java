package steadypull.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.DriverManager;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadypull.channel.Sample;
import steadypull.store.LibraryException.Reason;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.Vehicle;

/** A backup is whole whenever it is made, and comes back entry by entry. */
class BackupTest {
  private static final Instant NOW = Instant.parse("2026-07-15T17:45:12Z");
  private static final NewTrip TRIP =
      new NewTrip(
          Vehicle.unknown("Wattle 2", CoolingLayout.AIR_TO_AIR), NOW, "baseline", "test", "0.1.0");

  @TempDir Path place;

  // A copy made in steps begins anew with every commit of another program and may never end.
  @Test
  void aBackupIsWholeWhileAnotherProgramRecords() throws Exception {
    Path folder = place.resolve("library");
    Path file = place.resolve("backup.sqlite");
    long promised;
    String id;
    try (ChildRecorder child = ChildRecorder.start(folder, 50);
        TripLibrary library = TripLibrary.open(folder)) {
      child.awaitCommits(20);
      promised = child.lastPromised();
      id = child.tripId();

      Backup backup = library.backupTo(file, NOW, false);

      assertThat(backup.trips()).isEqualTo(1);
      assertThat(backup.samples()).isGreaterThan(promised);
      assertThat(backup.octets()).isEqualTo(Files.size(file));
      child.awaitCommits(1);
    }
    Path elsewhere = place.resolve("elsewhere");
    LibraryRestore.restore(file, elsewhere, NOW);

    try (TripLibrary restored = TripLibrary.open(elsewhere)) {
      List<TripEntry> entries = entries(restored, id);
      // It was being recorded, so here it was left behind.
      assertThat(restored.recovered()).containsExactly(id);
      entries.removeLast();
      assertThat(entries)
          .hasSizeGreaterThan((int) promised)
          .isEqualTo(
              LongStream.range(0, entries.size())
                  .mapToObj(number -> new TripEntry.OfSample(KilledRecorder.sample(number)))
                  .toList());
    }
  }

  @Test
  void aBackupIsOneSingleFileForItsOwnerOnly() throws Exception {
    Path folder = libraryOf(100);
    Path file = backupOf(folder);

    try (var files = Files.list(place)) {
      assertThat(files).containsExactlyInAnyOrder(folder, file);
    }
    // Offsets 18 and 19 are 2 for a database with a write-ahead log, else 1: Database File Format,
    // section 1.3.3 (https://www.sqlite.org/fileformat2.html).
    assertThat(ByteBuffer.wrap(Files.readAllBytes(file)).getShort(18)).isEqualTo((short) 0x0101);
    if (file.getFileSystem().supportedFileAttributeViews().contains("posix")) {
      assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(file)))
          .isEqualTo("rw-------");
    }
  }

  @Test
  void anEarlierBackupIsReplacedAndAnotherFileOnlyWhenToldSo() throws Exception {
    Path folder = libraryOf(100);
    Path letter = Files.writeString(place.resolve("letter.txt"), "Dear workshop");
    Path otherLibrary = libraryOf(10).resolve("library.sqlite");
    byte[] other = Files.readAllBytes(otherLibrary);
    try (TripLibrary library = TripLibrary.open(folder)) {
      Path file = place.resolve("backup.sqlite");
      library.backupTo(file, NOW, false);
      library.keep(TRIP, samples(5), 5);
      assertThat(library.backupTo(file, NOW, false).trips()).isEqualTo(2);

      assertFails(Reason.ALREADY_THERE, () -> library.backupTo(letter, NOW, false));
      assertFails(Reason.ALREADY_THERE, () -> library.backupTo(otherLibrary, NOW, false));
      assertFails(Reason.ALREADY_THERE, () -> library.backupTo(place, NOW, true));
      assertThat(letter).hasContent("Dear workshop");
      assertThat(Files.readAllBytes(otherLibrary)).isEqualTo(other);

      library.backupTo(letter, NOW, true);
      assertThat(BackupFile.taken(letter)).contains(NOW);
    }
  }

  @Test
  void aLibraryIsNeverReplacedByItsOwnBackup() throws Exception {
    Path folder = libraryOf(100);
    try (TripLibrary library = TripLibrary.open(folder)) {
      Path itself = folder.resolve("library.sqlite");
      assertFails(Reason.ALREADY_THERE, () -> library.backupTo(itself, NOW, true));
      assertThat(library.trips(Optional.empty())).hasSize(1);
    }
  }

  @Test
  void aBackupThatFailsLeavesNothing() throws Exception {
    try (TripLibrary library = TripLibrary.open(libraryOf(100))) {
      Path nowhere = place.resolve("not there").resolve("backup.sqlite");
      assertThatThrownBy(() -> library.backupTo(nowhere, NOW, false))
          .isInstanceOf(LibraryException.class)
          .hasMessageContainingAll("Could not", "expected", "found", nowhere.toString());
    }
    try (var files = Files.list(place)) {
      assertThat(files).hasSize(1);
    }
  }

  // One flipped bit of a segment is nothing that the database itself would notice.
  @Test
  void aDamagedLibraryNeverReplacesAGoodBackup() throws Exception {
    Path folder = libraryOf(20_000);
    Path file = backupOf(folder);
    byte[] good = Files.readAllBytes(file);
    flipABitOfASegment(folder.resolve("library.sqlite"));

    try (TripLibrary library = TripLibrary.openToRead(folder)) {
      assertThatThrownBy(() -> library.backupTo(file, NOW, true))
          .isInstanceOfSatisfying(
              LibraryException.class, e -> assertThat(e.reason()).isEqualTo(Reason.DAMAGED))
          .hasMessageContainingAll(
              "Could not write a backup to " + file,
              "expected a library that is whole",
              "found damage",
              "What was there before is still there",
              "steadypull check");
    }

    assertThat(Files.readAllBytes(file)).isEqualTo(good);
    try (var files = Files.list(place)) {
      assertThat(files).containsExactlyInAnyOrder(folder, file);
    }
  }

  @Test
  void whatIsReplacedIsSetAsideUnderADatedName() throws Exception {
    Path folder = libraryOf(100);
    Path file = backupOf(folder);
    try (TripLibrary library = TripLibrary.open(folder)) {
      library.keep(TRIP, samples(5), 5);
    }

    LibraryRestore.Restored restored = LibraryRestore.restore(file, folder, NOW);

    assertThat(restored.trips()).isEqualTo(1);
    assertThat(restored.taken()).contains(NOW);
    Path aside = folder.resolve("library-replaced-20260715T174512Z.sqlite");
    assertThat(restored.setAside()).contains(aside);
    assertThat(tripsIn(folder)).isEqualTo(1);
    LibraryRestore.restore(aside, folder, NOW);
    assertThat(tripsIn(folder)).isEqualTo(2);
    assertThat(LibraryRestore.restore(file, place.resolve("new"), NOW).setAside()).isEmpty();
  }

  @Test
  void aLibraryThatSomebodyHasOpenIsNotReplaced() throws Exception {
    Path folder = libraryOf(100);
    Path file = backupOf(folder);
    try (TripLibrary library = TripLibrary.open(folder);
        TripRecorder recorder = library.begin(TRIP)) {
      assertFails(Reason.BUSY, () -> LibraryRestore.restore(file, folder, NOW));

      samples(5).forEach(sample -> append(recorder, sample));
      recorder.seal(5);
      assertThat(library.trips(Optional.empty())).hasSize(2);
    }
    try (var files = Files.list(folder)) {
      assertThat(files).containsExactly(folder.resolve("library.sqlite"));
    }
  }

  @Test
  void whatIsNoWholeBackupIsRefusedAndNothingChanges() throws Exception {
    Path folder = libraryOf(20_000);
    Path file = backupOf(folder);
    byte[] whole = Files.readAllBytes(file);
    byte[] present = Files.readAllBytes(folder.resolve("library.sqlite"));

    refused(Reason.NOT_A_LIBRARY, place.resolve("nothing.sqlite"), folder);
    refused(Reason.NOT_A_LIBRARY, place, folder);
    refused(Reason.NOT_A_LIBRARY, Files.writeString(place.resolve("a"), "Dear workshop"), folder);
    refused(Reason.NOT_A_LIBRARY, Files.createFile(place.resolve("empty")), folder);
    refused(Reason.NOT_A_LIBRARY, foreignDatabase(), folder);
    refused(Reason.DAMAGED, Files.write(file, Arrays.copyOf(whole, whole.length / 2)), folder);
    byte[] damaged = whole.clone();
    // Somewhere inside the samples: what begins with the letters of a segment.
    int segment = new String(whole, StandardCharsets.ISO_8859_1).indexOf("SPS");
    Arrays.fill(damaged, segment + 100, segment + 200, (byte) 0x55);
    refused(Reason.DAMAGED, Files.write(file, damaged), folder);
    Files.write(file, whole);
    execute(file, "pragma user_version = 99");
    refused(Reason.NEWER_SCHEMA, file, folder);

    assertThat(Files.readAllBytes(folder.resolve("library.sqlite"))).isEqualTo(present);
    try (var files = Files.list(folder)) {
      assertThat(files).containsExactly(folder.resolve("library.sqlite"));
    }
  }

  @Test
  void aDamagedLibraryIsReplacedAndKept() throws Exception {
    Path folder = libraryOf(100);
    Path file = backupOf(folder);
    Path library = folder.resolve("library.sqlite");
    byte[] damaged = new byte[(int) Files.size(library)];
    new SplittableRandom(3).nextBytes(damaged);
    Files.write(library, damaged);

    Path aside = LibraryRestore.restore(file, folder, NOW).setAside().orElseThrow();

    assertThat(Files.readAllBytes(aside)).isEqualTo(damaged);
    assertThat(tripsIn(folder)).isEqualTo(1);
  }

  private Path libraryOf(int samples) throws Exception {
    Path folder = place.resolve("library-" + samples);
    try (TripLibrary library = TripLibrary.open(folder)) {
      library.keep(TRIP, samples(samples), samples);
    }
    return folder;
  }

  private Path backupOf(Path folder) throws Exception {
    Path file = place.resolve("backup.sqlite");
    try (TripLibrary library = TripLibrary.open(folder)) {
      library.backupTo(file, NOW, false);
    }
    return file;
  }

  private Path foreignDatabase() throws Exception {
    Path file = place.resolve("recipes.sqlite");
    execute(file, "create table recipe (name text)");
    return file;
  }

  private static void flipABitOfASegment(Path file) throws Exception {
    byte[] octets = Files.readAllBytes(file);
    // A segment begins with these letters.
    int segment = new String(octets, StandardCharsets.ISO_8859_1).indexOf("SPS");
    octets[segment + 100] ^= 1;
    Files.write(file, octets);
  }

  private static void execute(Path file, String sql) throws Exception {
    try (var connection = DriverManager.getConnection("jdbc:sqlite:" + file);
        var statement = connection.createStatement()) {
      statement.execute(sql);
    }
  }

  private static void refused(Reason reason, Path backup, Path folder) {
    assertFails(reason, () -> LibraryRestore.restore(backup, folder, NOW));
  }

  private static void assertFails(Reason reason, ThrowingCallable call) {
    assertThatThrownBy(call)
        .isInstanceOfSatisfying(
            LibraryException.class, e -> assertThat(e.reason()).isEqualTo(reason))
        .hasMessageContainingAll("Could not", "expected", "found");
  }

  private static List<Sample> samples(int count) {
    return IntStream.range(0, count).mapToObj(KilledRecorder::sample).toList();
  }

  private static void append(TripRecorder recorder, Sample sample) {
    try {
      recorder.append(sample);
    } catch (LibraryException e) {
      throw new IllegalStateException(e);
    }
  }

  private static int tripsIn(Path folder) throws LibraryException {
    try (TripLibrary library = TripLibrary.open(folder)) {
      return library.trips(Optional.empty()).size();
    }
  }

  private static List<TripEntry> entries(TripLibrary library, String id) throws LibraryException {
    List<TripEntry> entries = new ArrayList<>();
    library.replay(id, entries::add);
    return entries;
  }
}
