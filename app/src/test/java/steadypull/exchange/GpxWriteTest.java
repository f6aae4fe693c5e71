package steadypull.exchange;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.tuple;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Isolated;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.road.Route;
import steadypull.road.RoutePoint;
import steadypull.road.RouteSegment;
import steadypull.store.NewTrip;
import steadypull.store.TripLibrary;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.Vehicle;

/** Trips become tracks that every program may read. */
@Isolated("sets the default language of the whole program")
class GpxWriteTest {
  private static final Instant START = Instant.parse("2026-07-15T17:45:12.5Z");
  private static final Instant CREATED = Instant.parse("2026-07-16T08:00:00Z");

  @TempDir Path folder;

  // Elements, their order, attributes: GPX 1.1 schema, gpxType, metadataType, trkType, wptType.
  @Test
  void aTripBecomesATrackToTheLetter() throws Exception {
    List<Sample> samples = new ArrayList<>();
    samples.add(new Sample(Channels.VEHICLE_SPEED, 900_000, 72.5));
    samples.addAll(position(1_000_000, 35.2201667, -114.4739667, 612.4));
    samples.add(new Sample(Channels.ENGINE_COOLANT_TEMP, 1_200_000, 96));
    samples.add(new Sample(Channels.ENGINE_COOLANT_TEMP, 1_400_000, 96.5));
    samples.addAll(position(2_000_125, 35.22, -114.47, 613));

    assertThat(write(ExportChoice.ALL, samples))
        .isEqualTo(
            """
            <?xml version='1.0' encoding='UTF-8'?>
            <gpx xmlns="http://www.topografix.com/GPX/1/1" xmlns:steadypull="urn:steadypull:trip:1" version="1.1" creator="Steadypull">
            <metadata><time>2026-07-16T08:00:00Z</time><bounds minlat="35.22" minlon="-114.4739667" maxlat="35.2201667" maxlon="-114.47"/></metadata>
            <trk>
            <name>Wattle 2</name><desc>Trip t</desc><trkseg>
            <trkpt lat="35.2201667" lon="-114.4739667"><ele>612.4</ele><time>2026-07-15T17:45:13.500Z</time><extensions><steadypull:value channel="vehicle_speed" unit="km/h" time_s="0.9">72.5</steadypull:value></extensions></trkpt>
            <trkpt lat="35.22" lon="-114.47"><ele>613</ele><time>2026-07-15T17:45:14.500125Z</time><extensions><steadypull:value channel="engine_coolant_temp" unit="degC" time_s="1.4">96.5</steadypull:value></extensions></trkpt>
            </trkseg>
            </trk>
            </gpx>
            """);
  }

  // GPX 1.1 schema, trksegType: where reception was lost, "start a new Track Segment for each
  // continuous span of track data".
  @Test
  void everyGapBeginsANewSegment() throws Exception {
    List<Sample> samples = new ArrayList<>();
    for (long second : new long[] {0, 1, 6, 12, 13}) {
      samples.addAll(position(second * 1_000_000, 1, (double) second, 5));
      // What else goes on does not bridge a stretch without positions.
      samples.add(new Sample(Channels.ENGINE_SPEED, second * 1_000_000 + 500_000, 1850));
    }

    assertThat(read(write(ExportChoice.ALL, samples)).segments())
        .extracting(RouteSegment::size)
        .containsExactly(3, 2);
  }

  @Test
  void aPlaceIsAPairOfTheSameMoment() throws Exception {
    List<Sample> samples = new ArrayList<>();
    samples.add(new Sample(Channels.LATITUDE, 0, 1));
    samples.add(new Sample(Channels.ALTITUDE, 10, 5));
    samples.add(new Sample(Channels.LONGITUDE, 20, 2));
    samples.addAll(position(30, 3, 4, 7));
    samples.add(new Sample(Channels.LATITUDE, 40, 5));
    samples.addAll(position(50, 6, 7, 20_000));

    assertThat(read(write(ExportChoice.ALL, samples)).segments().getFirst().points())
        .extracting(RoutePoint::latitudeDegrees, RoutePoint::elevationMetres)
        .containsExactly(tuple(3.0, OptionalDouble.of(7)), tuple(6.0, OptionalDouble.empty()));
  }

  // GPX 1.1 schema, latitudeType and longitudeType (maxExclusive 180).
  @Test
  void theMeridianOppositeToZeroHasOneNameAndImpossiblePlacesAreLeftOut() throws Exception {
    List<Sample> samples = new ArrayList<>(position(0, 1, 180, 5));
    samples.addAll(position(1_000_000, 91, 2, 5));
    samples.addAll(position(2_000_000, 1, -179.5, 5));
    Path file = folder.resolve("trip.gpx");

    WrittenTracks written =
        GpxFile.write(file, CREATED, ExportChoice.ALL, TransferWatch.NONE, trip(samples));

    assertThat(written).isEqualTo(new WrittenTracks(2, 1, 1));
    assertThat(read(Files.readString(file)).segments().getFirst().point(0).longitudeDegrees())
        .isEqualTo(-180);
  }

  // xsd:decimal knows no exponent (XML Schema part 2, 3.2.3); some languages write a comma.
  @Test
  void numbersAreTheSameInEveryLanguage() throws Exception {
    Locale before = Locale.getDefault();
    try {
      Locale.setDefault(Locale.forLanguageTag("ar-EG-u-nu-arab"));
      String gpx = write(ExportChoice.ALL, position(0, 1.5e-7, -2e-9, -0.0));

      assertThat(gpx).contains("lat=\"0.00000015\" lon=\"-0.000000002\"><ele>0</ele><time>2026-");
      GpxSchema.validate(gpx);
    } finally {
      Locale.setDefault(before);
    }
  }

  @Test
  void measuredOnlyLeavesTheDerivedValuesOut() throws Exception {
    List<Sample> samples = new ArrayList<>();
    samples.add(new Sample(Channels.ROAD_GRADE, 0, 8));
    samples.add(new Sample(Channels.GEAR, 0, 3));
    samples.addAll(position(0, 1, 2, 5));

    assertThat(write(ExportChoice.ALL, samples)).contains("road_grade", "gear");
    assertThat(write(new ExportChoice(true, false), samples))
        .contains("gear")
        .doesNotContain("road_grade");
  }

  @Test
  void namesAreWrittenSoThatNobodyMistakesThemForMarkup() throws Exception {
    String name = "<b>&amp;\"'\u0001\0\uFFFF\uD83D ]]> \uD83D\uDE9A\nM\u00fchle";
    Path file = folder.resolve("trip.gpx");
    List<Sample> samples = new ArrayList<>(position(0, 1, 2, 5));
    samples.add(0, new Sample(new Channel("own", "<\"&'>"), 0, 1));
    samples.addAll(position(1, 1, 2, 5));

    GpxFile.write(
        file,
        CREATED,
        ExportChoice.ALL,
        TransferWatch.NONE,
        new GpxTrip(name, name, START, samples::forEach));

    GpxSchema.validate(Files.readString(file));
    assertThat(GpxFile.read(file).routes().getFirst().name())
        .isEqualTo("<b>&amp;\"'\uFFFD\uFFFD\uFFFD\uFFFD ]]> \uD83D\uDE9A\nM\u00fchle");
  }

  @Test
  void severalTripsBecomeSeveralTracks() throws Exception {
    Path file = folder.resolve("trips.gpx");
    List<Sample> one = new ArrayList<>(position(0, 1, 2, 5));
    one.addAll(position(1, 3, 4, 5));

    GpxFile.write(file, CREATED, ExportChoice.ALL, TransferWatch.NONE, trip(one), trip(one));

    GpxSchema.validate(Files.readString(file));
    assertThat(GpxFile.read(file).routes()).hasSize(2);
  }

  @Test
  void aTripOfTheLibraryIsWritten() throws Exception {
    Path file = folder.resolve("trip.gpx");
    List<Sample> samples = new ArrayList<>(position(0, 1, 2, 5));
    samples.addAll(position(1_000_000, 3, 4, 5));
    try (TripLibrary library = TripLibrary.open(folder.resolve("library"))) {
      Vehicle vehicle = Vehicle.unknown("Wattle 2", CoolingLayout.AIR_TO_AIR);
      String id =
          library.keep(new NewTrip(vehicle, START, "after", "x", "0.1.0"), samples, 1_000_000);
      GpxFile.write(
          file,
          CREATED,
          ExportChoice.ALL,
          TransferWatch.NONE,
          GpxTrip.of(library, library.find(id)));

      assertThat(Files.readString(file))
          .contains("<name>Wattle 2, after</name><desc>Trip " + id + "</desc>");
    }
    assertThat(read(Files.readString(file)).segments().getFirst().point(1))
        .isEqualTo(new RoutePoint(3, 4, OptionalDouble.of(5), Optional.of(START.plusSeconds(1))));
  }

  @Test
  void withoutPositionsThereIsNoTrackAndTheOldFileStays() throws Exception {
    Path file = folder.resolve("trip.gpx");
    Files.writeString(file, "old");
    GpxTrip without = trip(List.of(new Sample(Channels.GEAR, 0, 3)));

    assertThatThrownBy(
            () -> GpxFile.write(file, CREATED, ExportChoice.ALL, TransferWatch.NONE, without))
        .isInstanceOf(TableException.class)
        .hasMessage(
            "Could not write %s: expected a trip with latitude and longitude of the same moment, found none in \"Trip t\". Record with a satellite receiver, or write a trip table such as trip.csv."
                .formatted(file));
    assertThatThrownBy(
            () ->
                GpxFile.write(
                    file,
                    CREATED,
                    new ExportChoice(false, true),
                    TransferWatch.NONE,
                    trip(position(0, 1, 2, 5))))
        .hasMessage(
            "Could not write %s: expected positions to write, found that they are to be left out. Leave them in, or write a trip table such as trip.csv."
                .formatted(file));
    assertThat(file).hasContent("old");
    assertThat(folder).isDirectoryContaining(entry -> entry.equals(file));
  }

  @Test
  void whoStopsTheWritingFindsTheOldFile() throws Exception {
    Path file = folder.resolve("trip.gpx");
    Files.writeString(file, "old");
    GpxTrip trip = trip(position(0, 1, 2, 5));
    for (int last = 1; last <= 4; last++) {
      int lookToStopAt = last;
      AtomicInteger looks = new AtomicInteger();
      // Two looks while the trips are looked through, two while they are written.
      TransferWatch stopping = done -> looks.incrementAndGet() < lookToStopAt;

      assertThatThrownBy(() -> GpxFile.write(file, CREATED, ExportChoice.ALL, stopping, trip, trip))
          .isInstanceOf(TableException.class)
          .hasMessage("Stopped writing %s, as asked. It is as it was before.".formatted(file));
      assertThat(file).hasContent("old");
      assertThat(folder).isDirectoryNotContaining("glob:**.part");
    }
  }

  @Test
  void whereNothingCanBeWrittenTheReasonIsTold() {
    GpxTrip trip = trip(position(0, 1, 2, 5));

    assertThatThrownBy(
            () -> GpxFile.write(folder, CREATED, ExportChoice.ALL, TransferWatch.NONE, trip))
        .hasMessageContaining("expected the name of a file, found a folder. Add a file name.");
    assertThatThrownBy(
            () ->
                GpxFile.write(
                    folder.resolve("none").resolve("trip.gpx"),
                    CREATED,
                    ExportChoice.ALL,
                    TransferWatch.NONE,
                    trip))
        .hasMessageContaining("expected a folder that takes a file, found no folder ")
        .hasMessageEndingWith("Choose another place or make room.");
  }

  private static GpxTrip trip(List<Sample> samples) {
    return new GpxTrip("Wattle 2", "Trip t", START, samples::forEach);
  }

  private String write(ExportChoice choice, List<Sample> samples) throws Exception {
    Path file = folder.resolve("trip.gpx");
    GpxFile.write(file, CREATED, choice, TransferWatch.NONE, trip(samples));
    String gpx = Files.readString(file);
    GpxSchema.validate(gpx);
    return gpx;
  }

  private static Route read(String gpx) throws Exception {
    return GpxFile.read("trip.gpx", gpx);
  }

  private static List<Sample> position(
      long micros, double latitude, double longitude, double metres) {
    return List.of(
        new Sample(Channels.LATITUDE, micros, latitude),
        new Sample(Channels.LONGITUDE, micros, longitude),
        new Sample(Channels.ALTITUDE, micros, metres));
  }
}
