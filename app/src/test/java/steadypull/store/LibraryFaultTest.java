package steadypull.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assumptions.assumeThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.LongStream;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.jdbi.v3.core.Handle;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.store.LibraryException.Reason;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.Vehicle;

class LibraryFaultTest {
  private static final NewTrip TRIP =
      new NewTrip(
          Vehicle.unknown("Wattle 2", CoolingLayout.AIR_TO_AIR),
          Instant.parse("2026-07-15T17:45:12Z"),
          "",
          "demo:long-hot-grade",
          "0.1.0");

  @TempDir Path folder;

  // The limit on pages makes SQLite answer SQLITE_FULL, the code of a full disk.
  @Test
  void afterAFullDiskALaterCommitWritesEverything() throws LibraryException {
    try (TripLibrary library = TripLibrary.open(folder);
        TripRecorder recorder = library.begin(TRIP)) {
      recorder.append(sample(0));
      recorder.commit(0);
      recorder.pragma("max_page_count = 1");
      appendAll(recorder, 1, 2_000);
      assertFails(Reason.DISK_FULL, () -> recorder.commit(1_999));
      appendAll(recorder, 2_000, 3_000);
      assertFails(Reason.DISK_FULL, () -> recorder.commit(2_999));
      assertThat(library.find(recorder.tripId()).samples()).isEqualTo(1);

      recorder.pragma("max_page_count = 1000000");
      recorder.commit(2_999);

      assertThat(timesOf(library, recorder.tripId())).isEqualTo(timesUpTo(3_000));
    }
  }

  /** More than any one segment takes: an hour of a busy adapter while the disk was full. */
  @Test
  void afterADiskThatWasFullForLongEverythingIsWritten() throws LibraryException {
    int many = 140_000;
    try (TripLibrary library = TripLibrary.open(folder);
        TripRecorder recorder = library.begin(TRIP)) {
      recorder.append(sample(0));
      recorder.commit(0);
      recorder.pragma("max_page_count = 1");
      appendAll(recorder, 1, many);
      assertFails(Reason.DISK_FULL, () -> recorder.commit(many));

      recorder.pragma("max_page_count = 1000000");
      recorder.commit(many);
      assertThat(timesOf(library, recorder.tripId())).isEqualTo(timesUpTo(many));
      appendAll(recorder, many, many + 10);
      recorder.seal(many + 10);

      assertThat(timesOf(library, recorder.tripId())).isEqualTo(timesUpTo(many + 10));
    }
  }

  @Test
  void whenMemoryIsFullTooASampleIsRefusedNotLost() throws LibraryException {
    try (TripLibrary library = TripLibrary.open(folder);
        TripRecorder recorder = library.begin(TRIP, 1_000)) {
      recorder.pragma("max_page_count = 1");
      appendAll(recorder, 0, 1_000);
      assertFails(Reason.DISK_FULL, () -> recorder.append(sample(1_000)));
      assertFails(Reason.MEMORY_FULL, () -> recorder.append(sample(1_000)));

      recorder.pragma("max_page_count = 1000000");
      recorder.seal(1_000);

      assertThat(timesOf(library, recorder.tripId())).isEqualTo(timesUpTo(1_000));
      assertThat(library.find(recorder.tripId()).sealed()).isTrue();
    }
  }

  // A commit can fail after every row has been written.
  @Test
  void aCommitThatFailsAtItsVeryEndIsWrittenAgainWhole() throws LibraryException {
    try (TripLibrary library = TripLibrary.open(folder);
        Handle handle =
            LibraryFile.connect(folder.resolve("library.sqlite"), Duration.ofSeconds(5)).open()) {
      TripRow row =
          Transaction.write(
              handle, it -> TripRow.insert(it, TRIP, "20260715T174512Z-test", "own id"));
      TripWriter writer = new TripWriter(row.key());
      TripTally tally = new TripTally();
      List<TripEntry> entries =
          List.of(new TripEntry.OfSample(sample(0)), new TripEntry.OfSample(sample(9_000_000)));
      entries.forEach(tally::add);
      assertThatThrownBy(
              () ->
                  Transaction.write(
                      handle,
                      it -> {
                        writer.write(it, entries, tally, false);
                        throw new IllegalStateException("the plug was pulled");
                      }))
          .hasMessage("the plug was pulled");
      writer.rolledBack();

      Transaction.write(handle, it -> writer.write(it, entries, tally, false));
      writer.committed();

      assertThat(timesOf(library, row.id())).containsExactly(0L, 9_000_000L);
      assertThat(library.find(row.id()).gaps()).hasSize(1);
      assertThat(library.find(row.id()).channels()).containsExactly(Channels.ENGINE_COOLANT_TEMP);
    }
  }

  @Test
  void withoutCommitsMemoryStaysBounded() throws LibraryException {
    try (TripLibrary library = TripLibrary.open(folder);
        TripRecorder recorder = library.begin(TRIP, 1_000)) {
      appendAll(recorder, 0, 2_500);

      assertThat(library.find(recorder.tripId()).samples()).isEqualTo(2_000);
    }
  }

  @Test
  void aWriterWhoFindsTheLibraryHeldSaysSoAndSucceedsLater() throws Exception {
    try (TripLibrary library = TripLibrary.open(folder, Duration.ofMillis(1));
        TripRecorder recorder = library.begin(TRIP)) {
      recorder.append(sample(0));
      try (Connection other = connect();
          Statement statement = other.createStatement()) {
        statement.execute("begin immediate");
        assertFails(Reason.BUSY, () -> recorder.commit(0));
        assertFails(Reason.BUSY, () -> library.begin(TRIP));
        // Reading goes on meanwhile.
        assertThat(library.find(recorder.tripId()).samples()).isZero();
        statement.execute("rollback");
      }
      recorder.commit(0);

      assertThat(library.find(recorder.tripId()).samples()).isEqualTo(1);
    }
  }

  @Test
  void twoProgramsMayRecordIntoOneLibrary() throws LibraryException {
    try (TripLibrary one = TripLibrary.open(folder);
        TripLibrary two = TripLibrary.open(folder);
        TripRecorder first = one.begin(TRIP);
        TripRecorder second = two.begin(TRIP)) {
      for (int time = 0; time < 100; time++) {
        first.append(sample(time));
        first.commit(time);
        second.append(sample(time));
        second.commit(time);
      }
      assertThat(timesOf(two, first.tripId())).isEqualTo(timesUpTo(100));
      assertThat(timesOf(one, second.tripId())).isEqualTo(timesUpTo(100));
    }
  }

  @Test
  void aReaderSeesTheTripAsItWasWhenReadingBegan() throws LibraryException {
    try (TripLibrary library = TripLibrary.open(folder);
        TripRecorder recorder = library.begin(TRIP)) {
      appendAll(recorder, 0, 500);
      recorder.commit(499);
      List<Long> seen = new ArrayList<>();
      library.replay(
          recorder.tripId(),
          entry -> {
            if (seen.isEmpty()) {
              commitMore(recorder);
            }
            seen.add(entry.timeMicros());
          });

      assertThat(seen).isEqualTo(timesUpTo(500));
      assertThat(timesOf(library, recorder.tripId())).isEqualTo(timesUpTo(501));
    }
  }

  @Test
  void whatTheConsumerThrowsComesThrough() throws LibraryException {
    try (TripLibrary library = TripLibrary.open(folder)) {
      String id = library.keep(TRIP, List.of(sample(0)), 0);

      assertThatThrownBy(
              () ->
                  library.replay(
                      id,
                      entry -> {
                        throw new IllegalStateException("enough");
                      }))
          .isInstanceOf(IllegalStateException.class)
          .hasMessage("enough");
    }
  }

  @Test
  void aFileOfSomethingElseIsLeftAlone() throws Exception {
    Path file = folder.resolve("library.sqlite");
    byte[] letter = "Dear workshop, ".repeat(1_000).getBytes(StandardCharsets.UTF_8);
    Files.write(file, letter);

    assertFails(Reason.NOT_A_LIBRARY, () -> TripLibrary.open(folder));
    assertThat(Files.readAllBytes(file)).isEqualTo(letter);
  }

  @Test
  void theDatabaseOfAnotherProgramIsLeftAlone() throws Exception {
    execute("create table recipe (name text)");

    assertFails(Reason.NOT_A_LIBRARY, () -> TripLibrary.open(folder));
  }

  @Test
  void aNewerLibraryIsRefusedWithBothVersions() throws Exception {
    TripLibrary.open(folder).close();
    execute("pragma user_version = 99");

    assertThatThrownBy(() -> TripLibrary.open(folder))
        .isInstanceOfSatisfying(
            LibraryException.class, e -> assertThat(e.reason()).isEqualTo(Reason.NEWER_SCHEMA))
        .hasMessageContaining("version %d or older, found version 99".formatted(Schema.NEWEST))
        .hasMessageContaining("Update the program");
  }

  @Test
  void aDamagedPageGivesAMessageNotWrongValues() throws Exception {
    String id;
    try (TripLibrary library = TripLibrary.open(folder)) {
      List<Sample> samples = new ArrayList<>();
      for (int time = 0; time < 20_000; time++) {
        samples.add(sample(time));
      }
      id = library.keep(TRIP, samples, 20_000);
    }
    overwriteMiddle(folder.resolve("library.sqlite"));

    try (TripLibrary library = TripLibrary.open(folder)) {
      assertFails(Reason.DAMAGED, () -> library.replay(id, entry -> {}));
    }
  }

  @Test
  void aDatabaseThatMayOnlyBeReadIsNamed() throws Exception {
    try (TripLibrary library = TripLibrary.open(folder);
        TripRecorder recorder = library.begin(TRIP)) {
      recorder.pragma("query_only = 1");
      recorder.append(sample(0));
      assertFails(Reason.READ_ONLY, () -> recorder.commit(0));

      recorder.pragma("query_only = 0");
    }
  }

  @Test
  void aFolderThatMayOnlyBeReadIsNamed() throws Exception {
    assumeThat(folder.getFileSystem().supportedFileAttributeViews()).contains("posix");
    Path closed = Files.createDirectory(folder.resolve("closed"));
    Files.setPosixFilePermissions(closed, PosixFilePermissions.fromString("r-x------"));
    // The superuser may write anywhere: there the test above stands in.
    assumeThat(Files.isWritable(closed)).isFalse();

    assertFails(Reason.READ_ONLY, () -> TripLibrary.open(closed));
  }

  @Test
  void aFileInPlaceOfTheFolderIsNamed() throws Exception {
    Path file = Files.writeString(folder.resolve("notes.txt"), "notes");

    assertThatThrownBy(() -> TripLibrary.open(file))
        .isInstanceOf(LibraryException.class)
        .hasMessageContaining("notes.txt");
  }

  private static void commitMore(TripRecorder recorder) {
    try {
      recorder.append(sample(500));
      recorder.commit(500);
    } catch (LibraryException e) {
      throw new IllegalStateException(e);
    }
  }

  private static void overwriteMiddle(Path file) throws IOException {
    byte[] bytes = Files.readAllBytes(file);
    Arrays.fill(bytes, bytes.length / 2, bytes.length / 2 + 40_000, (byte) 0x55);
    Files.write(file, bytes);
  }

  private void execute(String sql) throws SQLException {
    try (Connection connection = connect();
        Statement statement = connection.createStatement()) {
      statement.execute(sql);
    }
  }

  private Connection connect() throws SQLException {
    return DriverManager.getConnection("jdbc:sqlite:" + folder.resolve("library.sqlite"));
  }

  private static void assertFails(Reason reason, ThrowingCallable call) {
    assertThatThrownBy(call)
        .isInstanceOfSatisfying(
            LibraryException.class, e -> assertThat(e.reason()).isEqualTo(reason))
        .hasMessageContainingAll("Could not", "expected", "found", "library");
  }

  private static void appendAll(TripRecorder recorder, int from, int to) throws LibraryException {
    for (int time = from; time < to; time++) {
      recorder.append(sample(time));
    }
  }

  private static Sample sample(long micros) {
    // No two alike, so that nothing is saved by writing them cleverly.
    return new Sample(Channels.ENGINE_COOLANT_TEMP, micros, Math.sin((double) micros * micros));
  }

  private static List<Long> timesOf(TripLibrary library, String id) throws LibraryException {
    List<Long> times = new ArrayList<>();
    library.replay(id, entry -> times.add(entry.timeMicros()));
    return times;
  }

  private static List<Long> timesUpTo(long end) {
    return LongStream.range(0, end).boxed().toList();
  }
}
