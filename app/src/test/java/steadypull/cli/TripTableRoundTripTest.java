package steadypull.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Trips out of the library and into it again. */
class TripTableRoundTripTest {
  @TempDir private Path folder;
  private Desk desk;
  private String trip;

  @BeforeEach
  void recordADrive() {
    desk = new Desk(folder.resolve("library"));
    trip =
        desk.type(
                "record",
                "--quiet",
                "--port",
                "demo:cool-day?speed=max",
                "--vehicle",
                "Wattle 2",
                "--for",
                "30s")
            .line();
  }

  private Path exported(String name, String... options) {
    Path file = folder.resolve(name);
    List<String> all = new ArrayList<>(List.of("export", trip, "--to", file.toString()));
    all.addAll(List.of(options));
    Desk.Answer answer = desk.type(all.toArray(String[]::new));
    assertThat(answer.status()).as(answer.err()).isZero();
    return file;
  }

  private static List<String> header(Path table) throws Exception {
    return List.of(Files.readAllLines(table).getFirst().split(","));
  }

  @Test
  void exportedImportedAndExportedAgainIsTheSameFile() throws Exception {
    Path first = exported("first.csv");
    String copy = desk.type("import", first.toString(), "--vehicle", "Copy").line();
    Path second = folder.resolve("second.csv");
    Desk.Answer answer = desk.type("export", copy, "--to", second.toString());

    assertThat(answer.status()).isZero();
    assertThat(second).hasSameBinaryContentAs(first);
  }

  @Test
  void measuredOnlyLeavesOutWhatWasDerived() throws Exception {
    Set<String> derived = Set.of("road_grade[%]", "wheel_torque[N.m]", "wheel_power[kW]");

    assertThat(header(exported("all.csv"))).containsAll(derived);
    assertThat(header(exported("few.csv", "--measured-only")))
        .startsWith("time[s]")
        .contains("charge_air_temp_out[degC]")
        .doesNotContainAnyElementsOf(derived);
  }

  @Test
  void exportingWithoutPositionsTellsNobodyWhereTheDriveWas() throws Exception {
    Path table =
        Files.writeString(
            folder.resolve("placed.csv"),
            """
            time[s],vehicle_speed[km/h],latitude[deg],longitude[deg],altitude[m]
            0,80,1.5,2.5,300
            1,80,1.6,2.6,301
            """);
    String placed = desk.type("import", table.toString()).line();
    Path away = folder.resolve("away.csv");
    Desk.Answer answer =
        desk.type("export", placed, "--to", away.toString(), "--no-positions", "--measured-only");

    assertThat(away)
        .content()
        .isEqualToNormalizingNewlines(
            """
            time[s],vehicle_speed[km/h],altitude[m]
            0,80,300
            1,80,301
            """);
    assertThat(answer.err()).contains("Wrote 4 samples");
  }

  @Test
  void aFaultInOneOfSeveralTablesLeavesTheLibraryAsItWas() throws Exception {
    Path good = exported("good.csv");
    Path bad =
        Files.writeString(folder.resolve("bad.csv"), "time[s],vehicle_speed[km/h]\n0,fast\n");
    String before = desk.type("trips").out();

    Desk.Answer answer = desk.type("import", good.toString(), bad.toString());

    assertThat(answer.status()).isEqualTo(1);
    assertThat(answer.out()).isEmpty();
    assertThat(answer.err()).contains("bad.csv", "line 2", "\"fast\"");
    assertThat(desk.type("trips").out()).isEqualTo(before);
  }

  @Test
  void aUniqueBeginningOfAnIdIsEnough() {
    Path table = folder.resolve("short.csv");
    Desk.Answer answer =
        desk.type("export", trip.substring(0, trip.length() - 1), "--to", table.toString());

    assertThat(answer.status()).isZero();
    assertThat(table).hasSameBinaryContentAs(exported("long.csv"));
  }
}
