package steadypull.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;

/** Rules that a library changes are listed, checked, rehearsed and in force on the next drive. */
@Execution(ExecutionMode.CONCURRENT)
class RulesCommandTest {
  private static final String WARM =
      """
      extends = true

      [[rule]]
      id = "{channel}-warm"
      watch = ["charge_air_temp_out"]
      condition = 'value >= 30.0'
      level = "notice"
      advise = "watch"
      why = "To be told early."
      """;

  @TempDir private Path folder;
  private Desk desk = new Desk(Path.of("unset"));
  private Path file = Path.of("unset");

  @BeforeEach
  void changeRules() throws Exception {
    Path library = folder.resolve("library");
    desk = new Desk(library);
    file = library.resolve("rules").resolve("every-vehicle.toml");
    Files.createDirectories(library.resolve("rules"));
    Files.writeString(file, WARM);
  }

  @Test
  void theListTellsPlacesChangesAndWhatIsOutOfService() throws Exception {
    Files.writeString(
        file, WARM + "[[out_of_service]]\nrule = \"link-lost\"\nreason = \"loose plug\"\n");
    List<String> lines = desk.type("rules", "--vehicle", "My rig").lines();
    assertThat(lines.getFirst()).isEqualTo("rules of every vehicle: " + file);
    assertThat(lines.get(1)).startsWith("rules of My rig: ").endsWith("(not there)");
    assertThat(lines)
        .anyMatch(line -> line.matches("notice +\\{channel}-warm +watch +changed"))
        .anyMatch(
            line -> line.matches("caution +link-lost +check-link +out of service: loose plug"))
        .anyMatch(line -> line.matches("caution +\\{channel}-near-limit +ease"));
  }

  @Test
  void theSameIsToldToMachines() throws Exception {
    JsonNode told = new ObjectMapper().readTree(desk.type("rules", "--json").line());
    JsonNode last = told.get(told.size() - 1);
    assertThat(last.get("id").asText()).isEqualTo("{channel}-warm");
    assertThat(last.get("changed").asBoolean()).isTrue();
    assertThat(told.get(0).get("changed").asBoolean()).isFalse();
  }

  @Test
  void theShippedFileIsPrintedAsAnExampleThatIsItselfWithoutFault() throws Exception {
    Path copy =
        Files.writeString(folder.resolve("copy.toml"), desk.type("rules", "--shipped").out());
    Desk.Answer answer = desk.type("rules", "--check", copy.toString());
    assertThat(answer.status()).as(answer.err()).isZero();
    assertThat(answer.line()).endsWith("rules, no fault");
  }

  @Test
  void aFaultyFileIsToldByCheckAndByEveryCommandThatGoesByRules() throws Exception {
    Path wrong =
        Files.writeString(folder.resolve("wrong.toml"), WARM.replace("value >=", "valeu >="));
    Desk.Answer checked = desk.type("rules", "--check", wrong.toString());
    assertThat(checked.status()).isEqualTo(1);
    assertThat(checked.err())
        .contains("wrong.toml:6:14: unknown name \"valeu\". Did you mean value");
    Files.writeString(file, WARM.replace("value >=", "valeu >="));
    Desk.Answer listed = desk.type("rules");
    assertThat(listed.status()).isZero();
    assertThat(listed.err())
        .contains("every-vehicle.toml:6:14", "rules without this file are in force");
  }

  @Test
  void changedRulesAreInForceOnADriveAndWhenItIsRepeated() {
    Desk.Answer drive = record();
    assertThat(drive.err()).contains("notice raised charge_air_temp_out: ");
    assertThat(desk.type("advise", drive.line()).out()).contains("\"rule\":\"charge-air-warm\"");
  }

  @Test
  void whatAFileWouldChangeIsToldTripByTripBesideTheRulesInForce() throws Exception {
    Files.delete(file);
    String trip = record().line();
    Path changes = Files.writeString(folder.resolve("warm.toml"), WARM);
    Desk.Answer told = desk.type("rehearse", "--rules", changes.toString());
    assertThat(told.lines())
        .anyMatch(line -> line.startsWith("rules-in-force "))
        .contains("What the file changes:")
        .anyMatch(
            line ->
                line.matches(trip + "  0:0\\d:\\d\\d  file only +notice raised charge-air-warm"));
    JsonNode json =
        new ObjectMapper()
            .readTree(desk.type("rehearse", "--json", "--rules", changes.toString()).line());
    assertThat(json.get("rows").findValuesAsText("forecaster"))
        .containsExactly("steadypull", "threshold", "straight-line", "rules-in-force");
    assertThat(json.get("changes").get(0).get("by").asText()).isEqualTo("file");
    assertThat(keys(json.get("changes").get(0)))
        .containsExactly("trip", "time_s", "event", "rule", "level", "by");
  }

  @Test
  void aRuleThatBreaksOnATripIsToldWithItsReason() throws Exception {
    Files.delete(file);
    record();
    Path broken =
        Files.writeString(
            folder.resolve("broken.toml"),
            WARM.replace("value >= 30.0", "int(seconds_to_limit_p90) < 20"));
    assertThat(desk.type("rehearse", "--rules", broken.toString()).lines())
        .anyMatch(
            line ->
                line.matches(
                    ".*file only +notice shelved \\{channel}-warm: The rule .* is put aside for"
                        + " this trip: .*"));
  }

  private static List<String> keys(JsonNode node) {
    List<String> keys = new ArrayList<>();
    node.fieldNames().forEachRemaining(keys::add);
    return keys;
  }

  private Desk.Answer record() {
    return desk.type(
        "record",
        "--port",
        "demo:cool-day?speed=max&start=240",
        "--vehicle",
        "Wattle 2",
        "--for",
        "1m");
  }
}
