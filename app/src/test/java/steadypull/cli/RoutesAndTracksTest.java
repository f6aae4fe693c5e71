package steadypull.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadypull.exchange.GpxFile;
import steadypull.road.Route;
import steadypull.store.KeptRoute;
import steadypull.store.RouteFile;
import steadypull.store.TripLibrary;

/** GPX into the library and out of it. */
class RoutesAndTracksTest {
  private static final String PLACED =
      """
      time[s],vehicle_speed[km/h],latitude[deg],longitude[deg],altitude[m]
      0,80,1.5,2.5,300
      1,81,1.6,2.6,301
      9,82,1.7,2.7,302
      """;

  private static final String TWO_ROUTES =
      """
      <gpx xmlns="http://www.topografix.com/GPX/1/1" version="1.1" creator="t">
      <wpt lat="1" lon="2"/>
      <rte><name>Quarry climb</name><rtept lat="1" lon="2"/><rtept lat="3" lon="4"/></rte>
      <trk><trkseg><trkpt lat="5" lon="6"><ele>7</ele></trkpt><trkpt lat="8" lon="9"/></trkseg></trk>
      <trk/>
      </gpx>
      """;

  @TempDir private Path folder;
  private Desk desk;

  @BeforeEach
  void openTheLibrary() {
    desk = new Desk(folder.resolve("library"));
  }

  @Test
  void aTripWithPositionsLeavesAsATrack() throws Exception {
    String trip = desk.type("import", file("placed.csv", PLACED), "--vehicle", "Wattle 2").line();
    Path track = folder.resolve("trip.gpx");

    Desk.Answer answer = desk.type("export", trip, "--to", track.toString());

    assertThat(answer.status()).as(answer.err()).isZero();
    assertThat(answer.out()).isEmpty();
    assertThat(answer.err()).contains("Wrote 3 points in 2 unbroken stretches to " + track);
    Route route = GpxFile.read(track).routes().getFirst();
    assertThat(route.name()).isEqualTo("Wattle 2");
    assertThat(route.segments().getLast().point(0).latitudeDegrees()).isEqualTo(1.7);
    assertThat(Files.readString(track)).contains("<metadata><time>" + Desk.NOW + "</time>");
  }

  @Test
  void aTrackWithoutPositionsIsRefused() throws Exception {
    String trip = desk.type("import", file("placed.csv", PLACED)).line();
    Path track = folder.resolve("trip.gpx");

    Desk.Answer answer = desk.type("export", trip, "--to", track.toString(), "--no-positions");

    assertThat(answer.status()).isEqualTo(1);
    assertThat(answer.err()).contains("expected positions to write");
    assertThat(track).doesNotExist();
  }

  @Test
  void everyRouteOfAFileGetsAnIdAndOutlivesTheCommand() throws Exception {
    Desk.Answer answer = desk.type("import", file("ways.gpx", TWO_ROUTES));

    assertThat(answer.status()).as(answer.err()).isZero();
    List<String> ids = answer.lines();
    assertThat(answer.err())
        .contains("waypoints are no route; left out 1.", "left out 1 with fewer.");
    try (TripLibrary library = TripLibrary.open(folder.resolve("library"))) {
      assertThat(library.routes())
          .containsExactly(
              new KeptRoute(ids.get(0), "Quarry climb"), new KeptRoute(ids.get(1), ""));
      String gpx = library.route(ids.get(1)).map(RouteFile::gpx).orElseThrow();
      assertThat(GpxFile.read("route", gpx))
          .isEqualTo(GpxFile.read(folder.resolve("ways.gpx")).routes().get(1));
    }
    assertThat(desk.type("import", file("again.gpx", TWO_ROUTES)).lines()).isEqualTo(ids);
  }

  @Test
  void tablesAndRoutesComeInTogetherOrNotAtAll() throws Exception {
    String table = file("placed.csv", PLACED);
    String routes = file("ways.gpx", TWO_ROUTES);
    String bad = file("bad.gpx", TWO_ROUTES.replace("lat=\"8\"", "lat=\"98\""));

    String badTable = file("bad.csv", PLACED.replace("82", "fast"));

    Desk.Answer refused = desk.type("import", routes, table, bad);
    assertThat(refused.status()).isEqualTo(1);
    assertThat(refused.out()).isEmpty();
    assertThat(refused.err())
        .startsWith(bad + ", line 4, column 57 (trkpt): expected lat from -90 to 90 degrees");
    assertThat(desk.type("import", routes, table, badTable).status()).isEqualTo(1);
    assertThat(desk.type("trips").out()).isEmpty();
    try (TripLibrary library = TripLibrary.open(folder.resolve("library"))) {
      assertThat(library.routes()).isEmpty();
    }

    Desk.Answer taken = desk.type("import", table, routes);
    assertThat(taken.lines()).hasSize(3);
    assertThat(taken.lines().subList(1, 3)).allMatch(id -> id.startsWith("route-"));
  }

  private String file(String name, String content) throws Exception {
    return Files.writeString(folder.resolve(name), content).toString();
  }
}
