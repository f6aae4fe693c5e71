package steadypull.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Tables of other programs, from the first guess to the mapping that is kept. */
class ForeignTableImportTest {
  private static final String TABLE =
      "Time,Coolant Temp (°F),RPM\n09:45:12,203,1850\n09:45:13,204,1900\n";
  private static final String MAP =
      """
      [time]
      column = "Time"
      format = "HH:mm:ss"
      date = 2026-03-01
      zone = "+01:00"
      [columns]
      "Coolant Temp (°F)" = "engine_coolant_temp[degF]"
      "RPM" = "engine_speed[r/min]"
      """;

  @TempDir private Path folder;
  private Desk desk;
  private Path table;
  private Path map;

  @BeforeEach
  void aTableOfAnotherProgram() throws Exception {
    desk = new Desk(folder.resolve("library"));
    table = dated(Files.writeString(folder.resolve("drive.csv"), TABLE), "2026-07-10T18:00:00Z");
    map = Files.writeString(folder.resolve("map.toml"), MAP);
  }

  private static Path dated(Path file, String moment) throws IOException {
    return Files.setLastModifiedTime(file, FileTime.from(Instant.parse(moment)));
  }

  private Desk.Answer importing(Path file, Object... options) {
    String[] arguments = new String[options.length + 2];
    arguments[0] = "import";
    arguments[1] = file.toString();
    for (int each = 0; each < options.length; each++) {
      arguments[each + 2] = options[each].toString();
    }
    return desk.type(arguments);
  }

  @Test
  void withoutAMappingItIsRefusedWithWhatItMayMean() {
    Desk.Answer answer = importing(table);

    assertThat(answer.status()).isEqualTo(1);
    assertThat(answer.out()).isEmpty();
    assertThat(answer.err())
        .contains("line 1, column 1: expected the header time[s], found \"Time\"")
        .contains("import FILE --propose-map", "--map MAP.toml")
        .contains("column 2: \"Coolant Temp (°F)\" is not understood. Did you mean engine_coolant")
        .contains("column 3: \"RPM\" is not understood. Did you mean engine_speed[r/min]?")
        .contains("Nothing was taken.");
    assertThat(desk.type("trips").out()).isEmpty();
  }

  @Test
  void theFirstGuessGoesToStandardOutputAndIsTakenAsItIs() throws Exception {
    Desk.Answer proposed = importing(table, "--propose-map");
    Files.writeString(map, proposed.out());
    Desk.Answer taken = importing(table, "--map", map);

    assertThat(proposed.status()).isZero();
    assertThat(proposed.err()).isEmpty();
    assertThat(desk.type("trips").lines()).hasSize(1);
    assertThat(taken.line()).startsWith("20260710T094512Z-");
    assertThat(taken.err())
        .contains("drive.csv: The table tells no day; the file's time gives 2026-07-10T09:45:12Z")
        .contains("drive.csv: Converted Coolant Temp (°F) to degC.");
  }

  @Test
  void aMappingIsKeptForItsKindOfTableButNotItsDay() throws Exception {
    Desk.Answer first = importing(table, "--map", map);
    Path next =
        dated(
            Files.writeString(folder.resolve("next.csv"), TABLE.replace("203", "199")),
            "2026-07-12T18:00:00Z");
    Desk.Answer second = importing(next);

    assertThat(first.line()).startsWith("20260301T084512Z-");
    assertThat(first.err()).contains("The mapping is kept");
    assertThat(second.status()).as(second.err()).isZero();
    assertThat(second.err()).contains("next.csv: Read by the mapping that was kept");
    assertThat(second.line()).startsWith("20260712T084512Z-");
    Path exported = folder.resolve("out.csv");
    desk.type("export", second.line(), "--to", exported.toString());
    assertThat(exported)
        .content()
        .isEqualToNormalizingNewlines(
            """
            time[s],engine_coolant_temp[degC],engine_speed[r/min]
            0,92.77777777777777,1850
            1,95.55555555555556,1900
            """);
  }

  @Test
  void aFaultyTableLeavesNeitherTripNorVehicleNorMapping() throws Exception {
    Files.writeString(table, TABLE + "09:45:14,hot,1900\n");
    Desk.Answer answer = importing(table, "--map", map, "--vehicle", "Newcomer");

    assertThat(answer.status()).isEqualTo(1);
    assertThat(answer.err()).contains("drive.csv, line 4, column 2 (Coolant Temp (°F))", "\"hot\"");
    assertThat(desk.type("trips").out()).isEmpty();
    assertThat(desk.type("vehicle", "Newcomer").status()).isEqualTo(1);
    assertThat(importing(table).err()).contains("expected the header time[s]");
  }

  @Test
  void theStartMayBeSaid() {
    Desk.Answer answer = importing(table, "--map", map, "--start", "2025-12-31T23:59:59-01:00");

    assertThat(answer.line()).startsWith("20260101T005959Z-");
  }

  @Test
  void aTableWithoutAStartIsAsOldAsItsFileButNeverOfTomorrow() throws Exception {
    Path own = Files.writeString(folder.resolve("own.csv"), "time[s],gear[1]\n0,3\n");

    assertThat(startOf(own, "2026-06-01T08:00:00Z")).startsWith("20260601T080000Z");
    assertThat(startOf(own, "2026-12-24T08:00:00Z")).startsWith("20260715T174512Z");
    assertThat(startOf(own, "1980-01-01T00:00:00Z")).startsWith("20260715T174512Z");
  }

  private String startOf(Path file, String fileTime) throws IOException {
    return importing(dated(file, fileTime), "--again").line();
  }

  @Test
  void contradictingOptionsAreWrongUsage() {
    for (Object[] options :
        new Object[][] {
          {"--propose-map", "--map", map},
          {"--propose-map", table},
          {"--start", "noon"},
          {table, "--start", "2026-07-15T17:45:12Z"}
        }) {
      Desk.Answer answer = importing(table, options);

      assertThat(answer.status()).as(answer.err()).isEqualTo(2);
      assertThat(answer.err()).contains("expected");
    }
  }

  @Test
  void aMappingThatCannotBeReadIsNamed() throws Exception {
    assertThat(importing(table, "--map", folder.resolve("no.toml")).err())
        .contains("no.toml", "found no file of that name");
    Files.write(map, new byte[] {(byte) 0xE9});
    assertThat(importing(table, "--map", map).err()).contains("bytes that are not UTF-8");
    Files.writeString(map, MAP.replace("columns", "colums"));
    assertThat(importing(table, "--map", map).err())
        .contains("map.toml, line 6, column 1", "Did you mean columns?");
  }
}
