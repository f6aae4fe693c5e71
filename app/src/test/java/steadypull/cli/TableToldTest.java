package steadypull.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.zip.GZIPInputStream;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What is said of tables that come twice, of options without use and of names without a kind. */
class TableToldTest {
  private static final String TABLE =
      """
      time[s],vehicle_speed[km/h],latitude[deg],longitude[deg]
      0,80,1.5,2.5
      1,80,1.5001,2.5001
      """;

  @TempDir private Path folder;
  private Desk desk;
  private Path table;

  @BeforeEach
  void aTable() throws Exception {
    desk = new Desk(folder.resolve("library"));
    table = Files.writeString(folder.resolve("drive.csv"), TABLE);
  }

  private Desk.Answer importing(Object... rest) {
    String[] arguments = new String[rest.length + 1];
    arguments[0] = "import";
    for (int each = 0; each < rest.length; each++) {
      arguments[each + 1] = rest[each].toString();
    }
    return desk.type(arguments);
  }

  private long trips() {
    return desk.type("trips").out().lines().count();
  }

  /** Learning takes the oldest trip first: one that broke it would keep all others waiting. */
  @ParameterizedTest
  @ValueSource(doubles = {90.5, 999})
  void placesWithoutRoadsTeachNothingAndStopNobody(double north) throws Exception {
    Desk.Answer answer = importing(way("nowhere.csv", north), "--start", "2026-07-01T10:00:00Z");
    Desk.Answer next = importing(way("way.csv", 1.5), "--start", "2026-07-02T10:00:00Z");

    assertThat(answer.status()).isZero();
    assertThat(desk.type("climbs", answer.line()).status()).isZero();
    assertThat(next.status()).isZero();
    assertThat(next.err()).contains("Learned the roads of 1 trip.");
  }

  /** Four minutes north and up, a row each second: a climb, where there is a road. */
  private Path way(String name, double north) throws Exception {
    StringBuilder rows =
        new StringBuilder("time[s],vehicle_speed[km/h],latitude[deg],longitude[deg],altitude[m]");
    for (int second = 0; second < 240; second++) {
      rows.append("\n%d,72,%s,2.5,%d".formatted(second, north + second * 0.00018, 100 + second));
    }
    return Files.writeString(folder.resolve(name), rows);
  }

  @Test
  void aTableThatWasImportedBeforeIsToldWithItsTrip() throws Exception {
    String trip = importing(table).line();
    Path packed = folder.resolve("renamed.csv.gz");
    try (var out = new GZIPOutputStream(Files.newOutputStream(packed))) {
      out.write(TABLE.getBytes(StandardCharsets.UTF_8));
    }
    for (Path same : new Path[] {table, packed}) {
      Desk.Answer answer = importing(same, "--vehicle", "Wattle 2");
      assertThat(answer.status()).isEqualTo(1);
      assertThat(answer.err()).contains("imported before as trip " + trip, "--again");
    }
    assertThat(trips()).isEqualTo(1);
    assertThat(desk.type("vehicle", "Wattle 2").status()).isEqualTo(1);
  }

  @Test
  void withAgainItBecomesOneMoreTrip() {
    String trip = importing(table).line();
    String other = importing(table, "--again").line();

    assertThat(other).isNotEqualTo(trip);
    assertThat(trips()).isEqualTo(2);
    assertThat(importing(table).err()).contains("imported before as trip " + trip);
  }

  @Test
  void theSameTableTwiceInOneImportLeavesTheLibraryAsItWas() {
    Desk.Answer answer = importing(table, table);

    assertThat(answer.status()).isEqualTo(1);
    assertThat(trips()).isZero();
  }

  @Test
  void aTableWhoseTripWasThrownAwayIsNew() {
    String trip = importing(table).line();
    desk.type("trip", trip, "--delete", "--yes");

    assertThat(importing(table).status()).isZero();
  }

  @Test
  void optionsWithoutUseForTheFilesAreTold() throws Exception {
    Path map =
        Files.writeString(
            folder.resolve("map.toml"),
            "[time]\ncolumn=\"T\"\nformat=\"seconds\"\n[columns]\n\"V\"=\"vehicle_speed[km/h]\"\n");
    String trip = importing(table, "--zone", "+02:00").line();
    Path file = folder.resolve("x.trip");
    desk.type("export", trip, "--to", file.toString());
    Path track = folder.resolve("x.gpx");
    desk.type("export", trip, "--to", track.toString());

    assertThat(importing(table, "--again", "--zone", "+02:00").err())
        .contains("drive.csv: --zone did nothing");
    assertThat(importing(file, "--map", map, "--label", "after").err())
        .contains("--map did nothing: it is for trip tables")
        .doesNotContain("--label");
    assertThat(importing(track, "--label", "after", "--again").err())
        .contains("--label did nothing", "--again did nothing");
    assertThat(importing(track, table, "--again").err()).doesNotContain("did nothing");
  }

  @ParameterizedTest
  @ValueSource(strings = {"trip.xlsx", "trip.txt", "trip", "trip.gz", "csv"})
  void aNameThatTellsNoKindIsRefusedWithThoseThatDo(String name) {
    String trip = importing(table).line();
    Desk.Answer answer = desk.type("export", trip, "--to", folder.resolve(name).toString());

    assertThat(answer.status()).isEqualTo(2);
    assertThat(answer.err()).contains(name, ".csv", ".csv.gz", ".trip", ".gpx");
    assertThat(folder.resolve(name)).doesNotExist();
  }

  @Test
  void aPackedTrackIsATrack() throws Exception {
    String trip = importing(table).line();
    Path plain = folder.resolve("x.gpx");
    Path packed = folder.resolve("x.gpx.gz");
    desk.type("export", trip, "--to", plain.toString());
    desk.type("export", trip, "--to", packed.toString());

    try (InputStream bytes = new GZIPInputStream(Files.newInputStream(packed))) {
      String text = new String(bytes.readAllBytes(), StandardCharsets.UTF_8);
      assertThat(text.replaceFirst("<time>.*?</time>", ""))
          .isEqualTo(Files.readString(plain).replaceFirst("<time>.*?</time>", ""));
    }
    assertThat(importing(packed).status()).isZero();
  }

  @Test
  void aZoneThatIsNoneIsAnsweredWithANearOne() {
    assertThat(importing(table, "--zone", "Etc/GMTT").err()).contains("Etc/GMTT", "Etc/GMT");
  }
}
