package steadypull.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What somebody is told who gives a drive a route: before anything is opened or created. */
class RecordAlongRouteTest {
  private static final String HILLY =
      """
      <gpx xmlns="http://www.topografix.com/GPX/1/1" version="1.1" creator="us">
      <rte><name>Two places</name><rtept lat="-41" lon="-118"/><rtept lat="-41.2" lon="-118"/></rte>
      <trk><name>Quarry climb</name><trkseg>
      <trkpt lat="-41.0000" lon="-118"><ele>100</ele></trkpt>
      <trkpt lat="-41.0030" lon="-118"><ele>120</ele></trkpt>
      <trkpt lat="-41.0060" lon="-118"><ele>140</ele></trkpt></trkseg></trk>
      </gpx>
      """;

  @TempDir private Path folder;
  private Path library;
  private Desk desk;

  @BeforeEach
  void nameALibraryThatIsNotThere() {
    library = folder.resolve("library");
    desk = new Desk(library);
  }

  // 0.006 degrees of a meridian at 41 degrees south are 0.67 km (GeographicLib's series, from
  // memory: 111 034 m a degree there).
  @Test
  void theRouteThatTellsMostIsFollowedAndThatIsSaid() throws Exception {
    Desk.Answer answer = record(file(HILLY), "demo-receiver:cool-day?speed=40");

    assertThat(answer.status()).as(answer.err()).isZero();
    assertThat(answer.err())
        .startsWith("route Quarry climb: 0.7 km, with elevations all along")
        .contains("of its 2 routes this one tells most");
  }

  @Test
  void aRouteWithoutElevationsSaysWhatItIsGoodFor() throws Exception {
    Desk.Answer answer =
        record(file(HILLY.replaceAll("<ele>.*</ele>", "")), "demo-receiver:cool-day?speed=40");

    assertThat(answer.status()).as(answer.err()).isZero();
    assertThat(answer.err())
        .startsWith("route Quarry climb: 0.7 km, without elevations: it tells which way is meant;")
        .contains("grades ahead come from roads driven before");
  }

  @Test
  void nothingIsCreatedForABrokenFile() throws Exception {
    Path file = file(HILLY.replace("</gpx>", ""));
    Desk.Answer answer = record(file, "demo-receiver:cool-day?speed=40");

    assertThat(answer.status()).isEqualTo(1);
    assertThat(answer.err())
        .contains(file + ", line 8", "expected the rest of a GPX file", "Copy the file again.");
    assertThat(library).doesNotExist();
  }

  @Test
  void whatIsNoRoadIsRefusedBeforeAnythingIsCreated() throws Exception {
    Desk.Answer answer =
        record(file(HILLY.replaceAll("(?s)<trk>.*</trk>", "")), "demo-receiver:cool-day?speed=40");

    assertThat(answer.status()).isEqualTo(1);
    assertThat(answer.err())
        .contains("Could not follow the route in", "expected points at most 1 km apart", "found")
        .contains("take a track or a route with more points");
    assertThat(library).doesNotExist();
  }

  @Test
  void aRouteNeedsAReceiver() throws Exception {
    String file = file(HILLY).toString();
    Desk.Answer answer =
        desk.type("record", "--port", "demo:cool-day", "--vehicle", "Wattle 2", "--route", file);

    assertThat(answer.status()).isEqualTo(2);
    assertThat(answer.err())
        .contains("expected --receiver beside --route, found --route alone")
        .contains("Name the satellite receiver");
    assertThat(library).doesNotExist();

    assertThat(desk.type("--port", "demo:cool-day", "--route", file).status()).isEqualTo(2);
    assertThat(library).doesNotExist();
  }

  private Desk.Answer record(Path route, String receiver) {
    return desk.type(
        "record",
        "--port",
        "demo:cool-day?speed=max",
        "--receiver",
        receiver,
        "--route",
        route.toString(),
        "--vehicle",
        "Wattle 2",
        "--for",
        "40s");
  }

  private Path file(String content) throws IOException {
    return Files.writeString(folder.resolve("way.gpx"), content);
  }
}
