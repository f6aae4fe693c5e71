package steadypull.exchange;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.xml.sax.SAXException;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.road.Route;
import steadypull.road.RoutePoint;
import steadypull.road.RouteSegment;
import steadypull.road.RouteSegmentBuilder;

/** What is written comes back bit for bit, and is valid whatever it is. */
class GpxRoundTripTest {
  private static final long SEED = 20261128;
  private static final double[] EDGES = {0, 90, -90, -180, 1e-9, Math.nextDown(180), -0.0};

  @TempDir Path folder;

  @Test
  void everyRouteComesBackAsItWas() throws Exception {
    SplittableRandom random = new SplittableRandom(SEED);
    for (int run = 0; run < 300; run++) {
      Route route = anyRoute(random);
      String text = GpxFile.text(route);

      GpxSchema.validate(text);
      assertThat(GpxFile.read("route", text)).as("seed %d, run %d", SEED, run).isEqualTo(route);
      assertThat(GpxFile.text(GpxFile.read("route", text))).isEqualTo(text);
    }
  }

  @Test
  void everyTripComesBackPointByPoint() throws Exception {
    SplittableRandom random = new SplittableRandom(SEED);
    Instant start = Instant.parse("2026-07-15T17:45:12.000001Z");
    Path file = folder.resolve("trip.gpx");
    for (int run = 0; run < 100; run++) {
      List<RoutePoint> points = new ArrayList<>();
      List<Sample> samples = anyTrip(random, start, points);
      GpxTrip trip = new GpxTrip("t", "", start, samples::forEach);

      WrittenTracks written =
          GpxFile.write(file, start, ExportChoice.ALL, TransferWatch.NONE, trip);

      GpxSchema.validate(Files.readString(file));
      Route back = GpxFile.read(file).routes().getFirst();
      assertThat(back.segments().stream().flatMap(RouteSegment::points))
          .as("seed %d, run %d", SEED, run)
          .containsExactlyElementsOf(points);
      assertThat(written).isEqualTo(new WrittenTracks(points.size(), back.segments().size(), 0));
    }
  }

  // The judge is a judge: breaking any one rule of the GPX 1.1 schema is noticed (gpxType,
  // wptType, trksegType, latitudeType, longitudeType, extensionsType).
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        " version=\"1.1\"| version=\"1.0\"",
        " creator=\"Steadypull\"|~~",
        "GPX/1/1|GPX/1/0",
        "<ele>5</ele><time>2026-07-15T17:45:12Z</time>|<time>2026-07-15T17:45:12Z</time><ele>5</ele>",
        "<ele>5</ele>|<ele>5e0</ele>",
        "<ele>5</ele>|<ele>NaN</ele>",
        "<ele>5</ele>|<speed>5</speed>",
        "17:45:12Z|17:45Z",
        "lat=\"1\"|lat=\"90.1\"",
        "lon=\"2\"|lon=\"180\"",
        " lon=\"2\"|~~",
        "<trkseg>|<name>n</name><name>n</name><trkseg>",
        "<trkseg>|<trkseg><extensions/>",
      })
  void theSchemaNoticesABrokenRule(String rule, String broken) throws Exception {
    Optional<Instant> time = Optional.of(Instant.parse("2026-07-15T17:45:12Z"));
    RoutePoint point = new RoutePoint(1, 2, OptionalDouble.of(5), time);
    String valid = GpxFile.text(new Route("", List.of(RouteSegment.of(point, point))));
    GpxSchema.validate(valid);
    assertThat(valid).contains(rule);

    assertThatThrownBy(() -> GpxSchema.validate(valid.replace(rule, broken)))
        .isInstanceOf(SAXException.class);
  }

  private static Route anyRoute(SplittableRandom random) {
    List<RouteSegment> segments = new ArrayList<>();
    int count = random.nextInt(1, 4);
    for (int each = 0; each < count; each++) {
      RouteSegmentBuilder segment = new RouteSegmentBuilder();
      for (int left = random.nextInt(2, 40); left > 0; left--) {
        segment.add(anyPoint(random));
      }
      segments.add(segment.build());
    }
    return new Route(
        random.nextBoolean() ? "" : "Climb <" + random.nextInt() + "> & \"\u00e9\"", segments);
  }

  private static RoutePoint anyPoint(SplittableRandom random) {
    return new RoutePoint(
        anyDegrees(random, 90),
        anyDegrees(random, 180),
        random.nextBoolean()
            ? OptionalDouble.empty()
            : OptionalDouble.of(
                random.nextDouble(RoutePoint.LOWEST_METRES, RoutePoint.HIGHEST_METRES)),
        random.nextBoolean() ? Optional.empty() : Optional.of(anyTime(random)));
  }

  private static double anyDegrees(SplittableRandom random, double most) {
    double edge = EDGES[random.nextInt(EDGES.length)];
    return random.nextInt(5) == 0 && Math.abs(edge) <= most && edge < 180
        ? edge
        : random.nextDouble(-most, most);
  }

  private static Instant anyTime(SplittableRandom random) {
    return Instant.parse("0001-01-01T00:00:00Z")
        .plus(random.nextLong(9_998L * 365 * 86_400), ChronoUnit.SECONDS)
        .plus(random.nextInt(1_000_000), ChronoUnit.MICROS);
  }

  /** A trip, and the points that its track must have. */
  private static List<Sample> anyTrip(
      SplittableRandom random, Instant start, List<RoutePoint> points) {
    List<Sample> samples = new ArrayList<>();
    long micros = 0;
    int count = random.nextInt(2, 60);
    for (int each = 0; each < count; each++) {
      micros += random.nextLong(1, 8_000_000);
      samples.add(new Sample(Channels.ENGINE_SPEED, micros, random.nextDouble(8000)));
      micros += random.nextLong(1, 1_000_000);
      RoutePoint place = anyPoint(random);
      double latitude = place.latitudeDegrees() + 0.0;
      double longitude = place.longitudeDegrees() + 0.0;
      samples.add(new Sample(Channels.LONGITUDE, micros, longitude));
      if (place.elevationMetres().isPresent()) {
        samples.add(new Sample(Channels.ALTITUDE, micros, place.elevationMetres().getAsDouble()));
      }
      samples.add(new Sample(Channels.LATITUDE, micros, latitude));
      Optional<Instant> time = Optional.of(start.plus(micros, ChronoUnit.MICROS));
      points.add(new RoutePoint(latitude, longitude, place.elevationMetres(), time));
    }
    return samples;
  }
}
