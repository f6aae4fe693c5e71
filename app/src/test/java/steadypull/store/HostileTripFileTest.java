package steadypull.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowable;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import steadypull.store.LibraryException.Reason;

/** Files that only look like a trip are refused whole, and nothing in them runs. */
@Execution(ExecutionMode.CONCURRENT)
class HostileTripFileTest {
  @TempDir Path folder;
  private Path file;

  @BeforeEach
  void aGoodFileToSpoil() throws Exception {
    file = TripFiles.writeInto(folder);
  }

  private void assertRefused(Reason reason, String found) throws Exception {
    try (TripLibrary ours = TripLibrary.open(folder.resolve("ours"))) {
      assertThatThrownBy(() -> TripFiles.merge(ours, file))
          .isInstanceOfSatisfying(
              LibraryException.class,
              e -> assertThat(e.reason()).as(e.getMessage()).isEqualTo(reason))
          .hasMessageContaining("Could not read " + file)
          .hasMessageContaining("expected a trip file")
          .hasMessageContaining(found);
      assertThat(ours.trips(Optional.empty())).isEmpty();
      assertThat(ours.vehicleNames()).isEmpty();
    }
  }

  @Test
  void aFileOfAnotherKindIsRefused() throws Exception {
    Files.writeString(file, "time[s],vehicle_speed[km/h]\n0,80\n".repeat(100));
    assertRefused(Reason.NOT_A_LIBRARY, "a file of another kind");
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 16, 100, 4096, 20_000})
  void aFileThatIsCutShortIsRefused(int length) throws Exception {
    Files.write(file, Arrays.copyOf(Files.readAllBytes(file), length));

    try (TripLibrary ours = TripLibrary.open(folder.resolve("ours"))) {
      assertThatThrownBy(() -> TripFiles.merge(ours, file))
          .isInstanceOf(LibraryException.class)
          .hasMessageContaining("expected a trip file");
      assertThat(ours.trips(Optional.empty())).isEmpty();
    }
  }

  @Test
  void theDatabaseOfAnotherProgramIsRefused() throws Exception {
    Files.delete(file);
    TripFiles.tamper(file, "create table trip (id text)", "insert into trip values ('x')");
    assertRefused(Reason.NOT_A_LIBRARY, "the database of another program");
  }

  @Test
  void aFileOfANewerVersionIsRefused() throws Exception {
    TripFiles.tamper(file, "pragma user_version = " + (Schema.NEWEST + 1));
    assertRefused(Reason.NEWER_SCHEMA, "of a newer version");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "create trigger t after insert on event begin delete from trip; end",
        "create view v as select * from trip",
        "create index i on trip (lower(note))",
        "create table more (a text check (length(a) < 5))",
        "create virtual table more using fts5(a)",
        "alter table trip add column more text as (upper(note)) virtual",
        "drop table route"
      })
  void definitionsThatAreNotOursAreRefused(String planted) throws Exception {
    TripFiles.tamper(file, planted);
    assertRefused(Reason.NOT_A_LIBRARY, "definitions that the program did not write");
  }

  /** Names of this form belong to the database itself, and only writing past it makes one. */
  @Test
  void aTriggerInTheNameOfTheDatabaseItselfIsRefused() throws Exception {
    TripFiles.tamper(
        file,
        "pragma writable_schema = on",
        "insert into sqlite_master values ('trigger', 'sqlite_autoindex_trip_9', 'trip', 0, 'create"
            + " trigger sqlite_autoindex_trip_9 after insert on trip begin select 1; end')");
    assertRefused(Reason.NOT_A_LIBRARY, "definitions that the program did not write");
  }

  @Test
  void aHugeValueIsRefusedWithoutBeingRead() throws Exception {
    TripFiles.tamper(file, "update segment set samples = zeroblob(50000000)");
    assertRefused(Reason.DAMAGED, "a value of 50000000 bytes in segment.samples");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "update segment set samples = x'00'",
        "update segment set first_sample = 7",
        "update segment set sample_count = 2",
        "update trip set channel_keys = '99'",
        "update trip set channel_keys = 'a b'",
        "update trip set gaps = '5'",
        "update trip set start_offset_seconds = 999999",
        "update trip set outside_celsius = 400",
        "update trip set tags = 'a' || char(10) || char(10) || 'b'",
        "update event set kind = 'sorcery'",
        "update event set time_micros = -1",
        "update channel set id = 'NO'",
        "update trip_vehicle set vehicle_file = '{'"
      })
  void valuesThatCannotBeAreRefused(String spoiled) throws Exception {
    TripFiles.tamper(file, spoiled);
    assertRefused(Reason.DAMAGED, "a damaged file");
  }

  @Test
  void aLibraryOfSeveralTripsOrOfNoneIsNoTripFile() throws Exception {
    Path theirs = folder.resolve("theirs");
    try (TripLibrary library = TripLibrary.open(theirs)) {
      TripFiles.keep(library);
    }
    LibraryFile.closeAsOneFile(theirs);
    file = theirs.resolve("library.sqlite");
    assertRefused(Reason.NOT_A_LIBRARY, "a library of 2 trips");

    TripFiles.tamper(file, "update trip set removed = 1");
    assertRefused(Reason.NOT_A_LIBRARY, "a library of 0 trips");
  }

  /** An id becomes part of a file's name when its trip is brought to its end after a crash. */
  @Test
  void anIdThatPointsElsewhereIsNotTaken() throws Exception {
    TripFiles.tamper(file, "update trip set id = '../../evil'");
    try (TripLibrary ours = TripLibrary.open(folder.resolve("ours"))) {
      assertThat(TripFiles.merge(ours, file).id()).startsWith("20260715T174512Z-");
    }
  }

  /**
   * Whatever single octets are changed: a refusal or a trip, nothing else, and never half a one.
   */
  @Test
  void damageAnywhereIsRefusedOrHarmless() throws Exception {
    byte[] good = Files.readAllBytes(file);
    long seed = 20_261_128;
    Random random = new Random(seed);
    int refused = 0;
    try (TripLibrary ours = TripLibrary.open(folder.resolve("ours"))) {
      for (int run = 0; run < 30; run++) {
        byte[] bad = good.clone();
        int place = random.nextInt(bad.length);
        bad[place] ^= (byte) (1 + random.nextInt(255));
        Files.write(file, bad);

        Throwable fault = catchThrowable(() -> TripFiles.merge(ours, file));

        if (fault == null) {
          ours.trips(Optional.empty()).forEach(trip -> assertWhole(ours, trip, seed, place));
        } else {
          refused++;
          assertThat(fault)
              .as("seed %d, octet %d", seed, place)
              .isInstanceOf(LibraryException.class)
              .hasMessageContaining("expected");
        }
      }
    }
    assertThat(refused).as("the damage of seed %d was seen", seed).isPositive();
  }

  private static void assertWhole(TripLibrary library, TripSummary trip, long seed, int place) {
    assertThat(catchThrowable(() -> TripFiles.entries(library, trip.id())))
        .as("seed %d, octet %d", seed, place)
        .isNull();
    assertThat(trip.samples()).isEqualTo(5);
  }

  @Test
  void theMessageOfAForeignFileQuotesNoMoreThanALine() throws Exception {
    Files.write(file, "SQLite format 3\0\n\n\n".getBytes(StandardCharsets.US_ASCII));
    try (TripLibrary ours = TripLibrary.open(folder.resolve("ours"))) {
      assertThatThrownBy(() -> TripFiles.merge(ours, file)).hasMessageNotContaining("\n");
    }
  }
}
