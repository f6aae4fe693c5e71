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
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;

/** Trips out of the library and into it again. */
@Execution(ExecutionMode.CONCURRENT)
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

  // The live pipeline has computed what the first table holds; the second time the export has.
  @Test
  void whatOnlyWasMeasuredIsExportedWithTheDerivedChannelsOfTheLiveDrive() throws Exception {
    Path recorded = exported("recorded.csv");
    String copy =
        desk.type(
                "import",
                exported("few.csv", "--measured-only").toString(),
                "--vehicle",
                "Wattle 2")
            .line();
    Path again = folder.resolve("again.csv");
    desk.type("export", copy, "--to", again.toString());
    Path few = folder.resolve("fewAgain.csv");
    desk.type("export", copy, "--to", few.toString(), "--measured-only");

    // The drive went on to 30 s, the table ends with the last measured sample.
    List<String> live = Files.readAllLines(recorded);
    assertThat(live.removeLast()).startsWith("30,,");
    assertThat(Files.readAllLines(again)).isEqualTo(live);
    assertThat(few).hasSameBinaryContentAs(folder.resolve("few.csv"));
  }

  @Test
  void aDerivedChannelThatATableBringsIsLeftAsItIs() throws Exception {
    StringBuilder rows = new StringBuilder();
    for (int second = 0; second < 12; second++) {
      rows.append(second + ".5,2000,72,68,1000," + (77 + second) + "\n");
    }
    Path table =
        Files.writeString(
            folder.resolve("measured-power.csv"),
            "time[s],engine_speed[r/min],vehicle_speed[km/h],delivered_torque[%],"
                + "reference_torque[N.m],wheel_power[kW]\n"
                + rows);
    String tripOfTable = desk.type("import", table.toString()).line();
    Path out = folder.resolve("out.csv");
    desk.type("export", tripOfTable, "--to", out.toString());

    assertThat(out).hasSameTextualContentAs(table);
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
