package steadypull.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.Vehicle;

/** Who opens a library brings to their end the trips that nobody records any more. */
class LeftBehindTest {
  private static final NewTrip TRIP =
      new NewTrip(
          Vehicle.unknown("Wattle 2", CoolingLayout.AIR_TO_AIR),
          Instant.parse("2026-07-15T17:45:12Z"),
          "",
          "test",
          "0.1.0");

  /** More than one long segment and some short ones behind it. */
  private static final int MANY = TripWriter.LONG_SEGMENT + 5_000;

  @TempDir Path folder;

  @Test
  void aTripThatIsStillRecordedIsLeftAlone() throws Exception {
    try (TripLibrary library = TripLibrary.open(folder);
        TripRecorder recorder = library.begin(TRIP)) {
      recorder.append(sample(0));
      recorder.commit(0);

      try (TripLibrary other = TripLibrary.open(folder)) {
        assertThat(other.recovered()).isEmpty();
        assertThat(other.find(recorder.tripId()).sealed()).isFalse();
      }
      recorder.append(sample(1));
      recorder.seal(1);
      assertThat(library.find(recorder.tripId()).samples()).isEqualTo(2);
    }
    assertThat(lockFiles()).isEmpty();
  }

  @Test
  void aTripThatWasLetGoUnsealedIsSealedByTheNextWhoOpensWithEverySampleInItsPlace()
      throws Exception {
    String id;
    try (TripLibrary library = TripLibrary.open(folder)) {
      TripRecorder recorder = library.begin(TRIP);
      id = recorder.tripId();
      for (int number = 0; number < MANY; number++) {
        recorder.append(sample(number));
        if (number % 1_000 == 0) {
          recorder.commit(number);
        }
      }
      recorder.close();
      assertThat(library.find(id).sealed()).isFalse();
    }
    try (TripLibrary library = TripLibrary.open(folder)) {
      assertThat(library.recovered()).containsExactly(id);
      assertThat(library.find(id).sealed()).isTrue();
      List<TripEntry> entries = new ArrayList<>();
      library.replay(id, entries::add);
      assertThat(entries.removeLast()).isInstanceOf(TripEntry.OfEvent.class);
      assertThat(entries)
          .isEqualTo(
              LongStream.range(0, MANY)
                  .<TripEntry>mapToObj(number -> new TripEntry.OfSample(sample(number)))
                  .toList());
    }
    try (TripLibrary library = TripLibrary.open(folder)) {
      assertThat(library.recovered()).isEmpty();
    }
    assertThat(lockFiles()).isEmpty();
  }

  @Test
  void aTripLeftBehindBeforeItsFirstCommitIsAnEmptyTrip() throws Exception {
    try (TripLibrary library = TripLibrary.open(folder)) {
      library.begin(TRIP).close();
    }
    try (TripLibrary library = TripLibrary.open(folder)) {
      assertThat(library.trips(Optional.empty()))
          .singleElement()
          .satisfies(trip -> assertThat(trip.sealed()).isTrue())
          .satisfies(trip -> assertThat(trip.samples()).isZero());
    }
  }

  @Test
  void oneDamagedTripDoesNotKeepTheOthersFromTheirEnd() throws Exception {
    String whole;
    String damaged;
    try (TripLibrary library = TripLibrary.open(folder)) {
      damaged = leaveBehind(library);
      whole = leaveBehind(library);
    }
    try (Connection connection =
            DriverManager.getConnection("jdbc:sqlite:" + folder.resolve("library.sqlite"));
        PreparedStatement damage =
            connection.prepareStatement(
                "update segment set samples = zeroblob(length(samples)) where trip_key ="
                    + " (select trip_key from trip where id = ?)")) {
      damage.setString(1, damaged);
      assertThat(damage.executeUpdate()).isEqualTo(1);
    }

    try (TripLibrary library = TripLibrary.open(folder)) {
      assertThat(library.recovered()).containsExactly(whole);
      assertThat(library.find(whole).sealed()).isTrue();
      assertThat(library.find(damaged).sealed()).isFalse();
    }
  }

  private static String leaveBehind(TripLibrary library) throws LibraryException {
    try (TripRecorder recorder = library.begin(TRIP)) {
      recorder.append(sample(1));
      recorder.commit(1);
      return recorder.tripId();
    }
  }

  private List<Path> lockFiles() throws Exception {
    try (var files = Files.list(folder)) {
      return files.filter(file -> file.toString().endsWith(".recording")).toList();
    }
  }

  private static Sample sample(long number) {
    return new Sample(Channels.ENGINE_COOLANT_TEMP, number, 90 + number % 7);
  }
}
