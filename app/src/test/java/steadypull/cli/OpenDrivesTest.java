package steadypull.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.zip.GZIPInputStream;
import org.junit.jupiter.api.condition.EnabledIfEnvironmentVariable;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Real drives, where they are at hand: two tables of the "Automotive OBD-II Dataset" (DOI
 * 10.35097/1130, CC BY 4.0) as {@code drive-1.csv.gz} and {@code drive-2.csv.gz} in a folder that
 * the environment names. They are polled in turn, ten values, one a row: in row n the column n mod
 * 10 is fresh, as every change in them shows (no exception in 67 031 rows). The second has a header
 * that was encoded twice. Neither tells its day.
 */
@EnabledIfEnvironmentVariable(named = "STEADYPULL_OPEN_DRIVES", matches = ".+")
class OpenDrivesTest {
  private static final int POLLED = 10;

  @TempDir private Path folder;

  @ParameterizedTest
  @ValueSource(strings = {"drive-1.csv.gz", "drive-2.csv.gz"})
  void theFirstGuessTakesARealDriveAndFindsEveryPoll(String name) throws Exception {
    Path drive = Path.of(System.getenv("STEADYPULL_OPEN_DRIVES")).resolve(name);
    Desk desk = new Desk(folder.resolve("library"));
    Path map =
        Files.writeString(
            folder.resolve("map.toml"),
            desk.type("import", drive.toString(), "--propose-map").out());
    String id = desk.type("import", drive.toString(), "--map", map.toString()).line();
    Path table = folder.resolve("table.csv");
    desk.type("export", id, "--to", table.toString());

    assertThat(values(Files.readAllLines(table), false)).isEqualTo(values(lines(drive), true));
  }

  private static List<String> lines(Path packed) throws Exception {
    try (BufferedReader text =
        new BufferedReader(
            new InputStreamReader(
                new GZIPInputStream(Files.newInputStream(packed)), StandardCharsets.UTF_8))) {
      return text.lines().toList();
    }
  }

  /** The value of each row that was polled: the only one there, or the one whose turn it was. */
  private static List<Double> values(List<String> lines, boolean isHeld) {
    List<Double> values = new ArrayList<>();
    for (int row = 1; row < lines.size(); row++) {
      List<String> cells = List.of(lines.get(row).split(",", -1));
      List<String> polled =
          isHeld
              ? List.of(cells.get(1 + (row - 1) % POLLED))
              : cells.subList(1, cells.size()).stream().filter(each -> !each.isEmpty()).toList();
      polled.forEach(each -> values.add(Double.valueOf(each)));
    }
    return values;
  }
}
