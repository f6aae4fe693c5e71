package steadypull.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assumptions.assumeThat;

import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.zip.GZIPInputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.store.LibraryException.Reason;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.Vehicle;

/** Whoever only reads changes nothing, and can read where nothing may be written. */
class OpenToReadTest {
  private static final Vehicle WATTLE = Vehicle.unknown("Wattle 2", CoolingLayout.AIR_TO_AIR);
  private static final NewTrip TRIP =
      new NewTrip(WATTLE, Instant.parse("2026-07-15T17:45:12Z"), "", "test", "0.1.0");

  @TempDir Path place;

  @Test
  void whatIsNotThereIsEmptyAndStaysAway() throws Exception {
    Path nowhere = place.resolve("nowhere").resolve("library");
    try (TripLibrary library = TripLibrary.openToRead(nowhere);
        TripLibrary empty = TripLibrary.openToRead(place)) {
      assertThat(library.trips(Optional.empty())).isEmpty();
      assertThat(library.vehicleNames()).isEmpty();
      assertThat(empty.trips(Optional.empty())).isEmpty();
    }
    assertThat(place).isEmptyDirectory();
  }

  @Test
  void aTripThatWasLeftBehindIsReadAsItIs() throws Exception {
    String id;
    try (TripLibrary library = TripLibrary.open(place);
        TripRecorder recorder = library.begin(TRIP)) {
      id = recorder.tripId();
      recorder.append(sample(0));
      recorder.commit(0);
    }
    try (TripLibrary library = TripLibrary.openToRead(place)) {
      assertThat(library.recovered()).isEmpty();
      assertThat(library.find(id).sealed()).isFalse();
      assertThat(library.find(id).samples()).isEqualTo(1);
    }
    try (TripLibrary library = TripLibrary.open(place)) {
      assertThat(library.recovered()).containsExactly(id);
    }
  }

  @Test
  void whatWouldChangeSomethingIsRefused() throws Exception {
    try (TripLibrary library = TripLibrary.openToRead(place)) {
      assertThatThrownBy(() -> library.save(WATTLE)).satisfies(OpenToReadTest::isReadOnly);
      assertThatThrownBy(() -> library.begin(TRIP)).satisfies(OpenToReadTest::isReadOnly);
    }
  }

  /** The superuser may write anywhere, so the copy is asked for by its own name here. */
  @Test
  void aCopyHoldsWhatIsInTheLogOnly() throws Exception {
    try (TripLibrary library = TripLibrary.open(place);
        TripRecorder recorder = library.begin(TRIP)) {
      recorder.append(sample(0));
      recorder.append(sample(1));
      recorder.commit(1);
      Path where;
      try (ReadingCopy copy = ReadingCopy.of(place);
          LibraryConnection copied = LibraryConnection.open(copy.folder(), Duration.ZERO)) {
        where = copy.folder();
        List<TripSummary> trips =
            copied.ask("list the trips", handle -> new TripReader(handle).summaries(""));
        assertThat(trips)
            .singleElement()
            .satisfies(trip -> assertThat(trip.samples()).isEqualTo(2));
      }
      assertThat(where).doesNotExist();
    }
  }

  @Test
  void aFolderThatMayOnlyBeReadIsReadInEveryForm() throws Exception {
    assumeThat(place.getFileSystem().supportedFileAttributeViews()).contains("posix");
    try (TripLibrary library = TripLibrary.open(place)) {
      library.keep(TRIP, List.of(sample(0)), 0);
    }
    Path old = Files.createDirectory(place.resolve("old"));
    try (InputStream packed = getClass().getResourceAsStream("library-v2.sqlite.gz");
        InputStream library = new GZIPInputStream(packed)) {
      Files.copy(library, old.resolve("library.sqlite"));
    }
    for (Path folder : List.of(old, place)) {
      Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString("r-x------"));
    }
    try {
      assumeThat(Files.isWritable(place)).isFalse();
      for (Path folder : List.of(place, old)) {
        try (TripLibrary library = TripLibrary.openToRead(folder)) {
          assertThat(library.trips(Optional.empty())).hasSize(1);
        }
        assertThat(LibraryCheck.check(folder)).isEqualTo(CheckReport.ok(1));
      }
    } finally {
      for (Path folder : List.of(place, old)) {
        Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString("rwx------"));
      }
    }
  }

  private static void isReadOnly(Throwable thrown) {
    assertThat(thrown)
        .isInstanceOfSatisfying(
            LibraryException.class, e -> assertThat(e.reason()).isEqualTo(Reason.READ_ONLY))
        .hasMessageContainingAll("Could not", "expected", "found");
  }

  private static Sample sample(long micros) {
    return new Sample(Channels.ENGINE_COOLANT_TEMP, micros, 90);
  }
}
