package steadypull.drive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.store.NewTrip;
import steadypull.store.TripDetails;
import steadypull.store.TripEntry;
import steadypull.store.TripLibrary;
import steadypull.store.TripRecorder;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.Rig;
import steadypull.vehicle.Vehicle;

/** What can be done with trips that were really recorded. */
class KeptTripsTest {
  private static final int SECONDS = 60;

  @TempDir Path folder;
  private DemoDrives drives;
  private TripDesk desk;
  private String trip;

  @BeforeEach
  void recordATrip() throws Exception {
    drives = new DemoDrives(folder.resolve("library"));
    trip =
        drives
            .drive("demo:long-hot-grade?speed=max", SECONDS, new PipelineOutput() {})
            .tripId()
            .orElseThrow();
    desk = drives.desk().trips();
  }

  @AfterEach
  void close() {
    drives.close();
  }

  @Test
  void whatIsSaidIsKeptWithWhatWasTowed() throws Exception {
    TripDetails said = TripDetails.ofLabel("after").withNote("fan roaring");
    Rig rig = Rig.unknown().withMasses(OptionalDouble.of(7800), OptionalDouble.of(3200));
    WholeTrip now = desk.describe(trip, said, rig);

    assertThat(now).isEqualTo(desk.trip(trip));
    assertThat(now.summary().details()).isEqualTo(said);
    assertThat(now.rig()).isEqualTo(rig);
    assertThat(desk.find("ROARING")).hasSize(1);
    assertThat(desk.find("zebra")).isEmpty();
    assertThatThrownBy(() -> desk.trip("nothing")).isInstanceOf(DriveException.class);
  }

  @Test
  void whatIsThrownAwayComesBackUntilTheLibraryIsClosed() throws Exception {
    desk.throwAway(trip);
    assertThat(desk.all()).isEmpty();
    assertThat(desk.thrownAway()).hasSize(1);
    desk.bringBack(trip);
    assertThat(desk.all()).hasSize(1);
    assertThat(desk.thrownAway()).isEmpty();

    desk.throwAway(trip);
    drives.close();
    try (TripLibrary again = TripLibrary.open(folder.resolve("library"))) {
      assertThat(again.trips(Optional.empty())).isEmpty();
    }
  }

  @Test
  void aTripThatIsBeingRecordedIsNotThrownAway() throws Exception {
    NewTrip begun =
        new NewTrip(
            Vehicle.unknown("Wattle 2", CoolingLayout.AIR_TO_AIR), DemoDrives.START, "", "x", "1");
    try (TripRecorder _ = drives.library().begin(begun)) {
      String recording =
          desk.all().stream().filter(each -> !each.sealed()).findFirst().orElseThrow().id();
      assertThatThrownBy(() -> desk.throwAway(recording))
          .isInstanceOf(DriveException.class)
          .hasMessageContaining("expected a trip that has ended");
      assertThat(desk.thrownAway()).isEmpty();
      assertThat(desk.all()).hasSize(2);
    }
  }

  @Test
  void theNameOfTheFileTellsTheFormOfAnExport() throws Exception {
    Path table = folder.resolve("a.csv");
    Path whole = folder.resolve("a.trip");
    ExportEnd written = new ExportEnd.Written(drives.library().damage(trip));
    assertThat(desk.export(trip, ExportTarget.whole(table), _ -> true)).isEqualTo(written);
    assertThat(desk.export(trip, ExportTarget.whole(whole), _ -> true)).isEqualTo(written);

    assertThat(Files.readString(table)).startsWith("time[s],");
    // The first sixteen bytes of a database: SQLite, Database File Format, section 1.3.
    assertThat(Files.readAllBytes(whole))
        .startsWith("SQLite format 3\0".getBytes(StandardCharsets.US_ASCII));
    assertThatThrownBy(() -> desk.export(trip, ExportTarget.whole(folder), _ -> true))
        .isInstanceOf(DriveException.class)
        .hasMessageContaining("expected a name that ends in .csv");
  }

  @Test
  void placesAreLeftOutOfAnExportWhereThatIsAskedFor() throws Exception {
    String placed =
        drives
            .library()
            .keep(
                new NewTrip(
                    Vehicle.unknown("Wattle 2", CoolingLayout.AIR_TO_AIR),
                    DemoDrives.START,
                    "",
                    "x",
                    "1"),
                List.of(
                    new Sample(Channels.VEHICLE_SPEED, 0, 80),
                    new Sample(Channels.LATITUDE, 0, 1.5),
                    new Sample(Channels.LONGITUDE, 0, 2.5)),
                5);
    Path table = folder.resolve("quiet.csv");
    Path track = folder.resolve("quiet.gpx");
    desk.export(placed, ExportTarget.whole(table), _ -> true);
    assertThat(Files.readString(table).lines().findFirst().orElseThrow()).contains("latitude[deg]");

    desk.export(placed, new ExportTarget(table, true), _ -> true);
    assertThat(Files.readString(table).lines().findFirst().orElseThrow())
        .contains("vehicle_speed[km/h]")
        .doesNotContain("latitude", "longitude");
    assertThatThrownBy(() -> desk.export(placed, new ExportTarget(track, true), _ -> true))
        .hasMessageContaining("expected positions to write, found that they are to be left out");
  }

  /** Nothing of a file is there before all of it is. */
  @ParameterizedTest
  @ValueSource(strings = {"b.csv", "b.csv.gz", "b.trip"})
  void anExportThatIsStoppedLeavesWhatWasThere(String name) throws Exception {
    Path before = folder.resolve("before");
    Path exports = Files.createDirectory(folder.resolve("exports"));
    Path file = exports.resolve(name);
    desk.export(trip, ExportTarget.whole(file), _ -> true);
    Files.copy(file, before);
    List<Double> shares = new ArrayList<>();
    ExportEnd end =
        desk.export(
            trip,
            ExportTarget.whole(file),
            share -> {
              shares.add(share);
              return share == 0;
            });

    assertThat(end).isEqualTo(new ExportEnd.Stopped());
    assertThat(file).hasSameBinaryContentAs(before);
    assertThat(shares).allMatch(share -> share >= 0 && share <= 1);
    try (Stream<Path> left = Files.list(exports)) {
      assertThat(left).containsExactly(file);
    }
  }

  @Test
  void thePictureHoldsEveryLimitedChannelWithItsHottestSample() throws Exception {
    double[] hottest = {Double.NEGATIVE_INFINITY};
    drives
        .library()
        .replay(
            trip,
            entry -> {
              if (entry instanceof TripEntry.OfSample(Sample sample)
                  && sample.channel().equals(Channels.ENGINE_COOLANT_TEMP)) {
                hottest[0] = Math.max(hottest[0], sample.value());
              }
            });
    TripPicture picture;
    try (TripView view = desk.view(trip)) {
      picture = view.picture(TripWindow.whole(view.trip().summary()), 200);
    }
    TripPicture.Line coolant =
        picture.lines().stream()
            .filter(line -> line.channel().equals(Channels.ENGINE_COOLANT_TEMP))
            .findFirst()
            .orElseThrow();

    assertThat(coolant.leastHeadroomKelvin()).isEqualTo(coolant.limitCelsius() - hottest[0]);
    assertThat(picture.nearest().orElseThrow().leastHeadroomKelvin())
        .isLessThanOrEqualTo(coolant.leastHeadroomKelvin());
    assertThat(picture.damaged()).isEmpty();
  }

  /** Whoever comes closer sees each sample, at once as bounds and then itself. */
  @Test
  void aWindowOfATripIsKnownInBoundsAndThenExact() throws Exception {
    try (TripView view = desk.view(trip)) {
      TripWindow whole = TripWindow.whole(view.trip().summary());
      TripWindow window = whole.magnified(20, 0.5, whole);
      assertThat(view.known(window, 200).isExact()).isFalse();
      TripPicture exact = view.picture(window, 200);
      assertThat(exact.isExact()).isTrue();
      assertThat(exact.window()).isEqualTo(window);
      assertThat(view.known(window, 200).isExact()).isTrue();

      while (view.readAhead(whole) || view.examine()) {
        assertThat(view.known(whole, 200).lines()).isNotEmpty();
      }
      assertThat(view.damage()).isEqualTo(drives.library().damage(trip));
    }
  }

  @Test
  void aTripIsPlayedBackSecondBySecondUntilItIsLeftAndNothingIsRecorded() throws Exception {
    LinkedBlockingQueue<DriveSnapshot> seen = new LinkedBlockingQueue<>();
    CountDownLatch third = new CountDownLatch(3);
    DriveSession session =
        desk.playBack(
            trip,
            snapshot -> {
              seen.add(snapshot);
              third.countDown();
            });
    assertThat(third.await(60, TimeUnit.SECONDS)).isTrue();
    session.close();

    assertThat(seen).extracting(DriveSnapshot::timeMicros).startsWith(1_000_000L, 2_000_000L);
    assertThat(seen).allMatch(each -> each.recording() instanceof RecordingState.Off);
    assertThat(desk.all()).hasSize(1);
  }
}
