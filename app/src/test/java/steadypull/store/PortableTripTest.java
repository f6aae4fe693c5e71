package steadypull.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.zip.GZIPInputStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.store.MergedTrip.Way;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.Vehicle;

/** A trip goes from one library to another as a file, and stays the same trip. */
class PortableTripTest {
  @TempDir Path folder;
  private Path file;

  @BeforeEach
  void somebodyHandsOverATrip() throws Exception {
    file = TripFiles.writeInto(folder);
  }

  private TripLibrary ours() throws LibraryException {
    return TripLibrary.open(folder.resolve("ours"));
  }

  @Test
  void everythingThatBelongsToTheTripTravels() throws Exception {
    try (TripLibrary ours = ours();
        TripLibrary theirs = TripLibrary.open(folder.resolve("theirs"))) {
      TripSummary told = theirs.trips(Optional.empty()).getFirst();
      MergedTrip merged = TripFiles.merge(ours, file);

      assertThat(merged).isEqualTo(new MergedTrip(told.id(), Way.ADDED, List.of()));
      assertThat(ours.find(told.id())).isEqualTo(told);
      assertThat(told.details()).isEqualTo(TripFiles.DETAILS);
      assertThat(told.link()).isEqualTo(TripFiles.LINK);
      assertThat(told.gaps()).hasSize(1);
      assertThat(TripFiles.entries(ours, told.id()))
          .isEqualTo(TripFiles.entries(theirs, told.id()))
          .hasSize(8);
      assertThat(ours.vehicleOf(told.id())).isEqualTo(TripFiles.WATTLE);
      assertThat(ours.vehicle("Wattle 2")).contains(TripFiles.WATTLE);
    }
  }

  /** SQLite, "Database File Format", section 1.3: octets 18 and 19 are 2 with a write-ahead log. */
  @Test
  void itIsOneSingleFileWithoutALogBesideIt() throws Exception {
    ByteBuffer head = ByteBuffer.wrap(Files.readAllBytes(file));

    assertThat(head.get(18)).isEqualTo((byte) 1);
    assertThat(head.get(19)).isEqualTo((byte) 1);
    assertThat(folder.toFile().list()).containsExactlyInAnyOrder("x.trip", "theirs");
    try (PortableTrip _ = PortableTrip.open(file)) {
      assertThat(folder.toFile().list()).containsExactlyInAnyOrder("x.trip", "theirs");
    }
  }

  @Test
  void theSameFileTwiceIsOneTrip() throws Exception {
    try (TripLibrary ours = ours()) {
      String id = TripFiles.merge(ours, file).id();
      TripSummary before = ours.find(id);

      assertThat(TripFiles.merge(ours, file))
          .isEqualTo(new MergedTrip(id, Way.ALREADY_HERE, List.of()));
      assertThat(ours.trips(Optional.empty())).containsExactly(before);
    }
  }

  @Test
  void aTripThatWasThrownAwayComesBackAndStaysWhenTheLibraryIsClosed() throws Exception {
    String id;
    try (TripLibrary ours = ours()) {
      id = TripFiles.merge(ours, file).id();
      ours.remove(id);
      assertThat(TripFiles.merge(ours, file))
          .isEqualTo(new MergedTrip(id, Way.BROUGHT_BACK, List.of()));
    }
    try (TripLibrary ours = ours()) {
      assertThat(ours.trips(Optional.empty())).extracting(TripSummary::id).containsExactly(id);
      ours.remove(id);
    }
    try (TripLibrary ours = ours()) {
      assertThat(TripFiles.merge(ours, file)).isEqualTo(new MergedTrip(id, Way.ADDED, List.of()));
    }
  }

  @Test
  void whatWasSaidHereStaysAndWhatWasNotIsTaken() throws Exception {
    try (TripLibrary ours = ours()) {
      String id = TripFiles.merge(ours, file).id();
      TripDetails said =
          new TripDetails("", "ours", List.of("mine"), "", "calm", OptionalDouble.empty());
      ours.describe(id, said);

      MergedTrip merged = TripFiles.merge(ours, file);

      assertThat(merged.kept()).containsExactly("note", "outside conditions");
      assertThat(ours.find(id).details())
          .isEqualTo(
              new TripDetails(
                  "after",
                  "ours",
                  List.of("mine", "north ramp", "hot"),
                  "second charge cooler",
                  "calm",
                  OptionalDouble.of(34.5)));
    }
  }

  @Test
  void anIdThatAnotherTripHasHereIsReplaced() throws Exception {
    try (TripLibrary ours = ours()) {
      String id = TripFiles.merge(ours, file).id();
      Path other = folder.resolve("other.trip");
      Files.copy(file, other);
      TripFiles.tamper(other, "update trip set origin = 'another'");

      MergedTrip merged = TripFiles.merge(ours, other);

      assertThat(merged.way()).isEqualTo(Way.ADDED);
      assertThat(merged.id()).isNotEqualTo(id).startsWith("20260715T174512Z-");
      assertThat(ours.find(merged.id()).origin()).isEqualTo("another");
      assertThat(ours.trips(Optional.empty())).hasSize(2);
    }
  }

  @Test
  void aVehicleThatIsKnownHereIsLeftAsItIs() throws Exception {
    try (TripLibrary ours = ours()) {
      Vehicle known = Vehicle.unknown("Wattle 2", CoolingLayout.WATER_TO_AIR);
      ours.save(known);
      String id = TripFiles.merge(ours, file).id();

      assertThat(ours.vehicle("Wattle 2")).contains(known);
      assertThat(ours.vehicleOf(id)).isEqualTo(TripFiles.WATTLE);
    }
  }

  @Test
  void aTripThatACrashLeftBehindIsBroughtToItsEndOnTheWay() throws Exception {
    Path left = folder.resolve("left");
    NewTrip trip = new NewTrip(TripFiles.WATTLE, TripFiles.START, "", "x", "0.1.0");
    try (TripLibrary library = TripLibrary.open(left);
        TripRecorder recorder = library.begin(trip)) {
      recorder.append(new Sample(Channels.VEHICLE_SPEED, 1, 80));
      recorder.commit(2_000_000);
    }
    try (TripLibrary ours = ours()) {
      String id = TripFiles.merge(ours, LibraryFile.closeAsOneFile(left)).id();

      assertThat(ours.find(id).sealed()).isTrue();
      assertThat(TripFiles.entries(ours, id).getLast())
          .isEqualTo(
              new TripEntry.OfEvent(
                  new TripEvent(2_000_000, TripEvent.Kind.RECORDING, LeftBehind.DETAIL)));
    }
  }

  /** The fixtures of {@link OlderLibrariesTest} hold one trip each, as a trip file does. */
  @ParameterizedTest
  @ValueSource(strings = {"library-v1.sqlite.gz", "library-v2.sqlite.gz"})
  void everyOlderFormIsReadAndTheFileStaysAsItIs(String resource) throws Exception {
    Path old = folder.resolve("old.trip");
    try (InputStream packed = PortableTripTest.class.getResourceAsStream(resource)) {
      Files.write(old, new GZIPInputStream(packed).readAllBytes());
    }
    byte[] before = Files.readAllBytes(old);
    try (TripLibrary ours = ours()) {
      String id = TripFiles.merge(ours, old).id();

      assertThat(ours.find(id).samples()).isEqualTo(3885);
      assertThat(Files.readAllBytes(old)).isEqualTo(before);
    }
  }
}
