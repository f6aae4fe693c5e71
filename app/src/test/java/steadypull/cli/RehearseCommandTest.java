package steadypull.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;

/** Two recorded drives, a hot one and a cool one, scored. */
@Execution(ExecutionMode.CONCURRENT)
class RehearseCommandTest {
  @TempDir private static Path folder;
  private static Desk desk;
  private static String hot;
  private static String cool;

  @BeforeAll
  static void record() {
    desk = new Desk(folder.resolve("library"));
    hot = recorded("demo:long-hot-grade?speed=max&start=240", "8m");
    cool = recorded("demo:cool-day?speed=max&start=240", "4m");
  }

  private static String recorded(String port, String length) {
    return desk.type("record", "--port", port, "--vehicle", "Wattle 2", "--for", length).line();
  }

  /** Contracts, "JSON forms". */
  @Test
  void allTripsAsJsonHaveTheKeysOfTheContract() throws Exception {
    JsonNode told = json("rehearse", "--json");

    assertThat(keys(told)).startsWith("trips", "hours", "derates", "rows");
    assertThat(told.get("trips").asInt()).isEqualTo(2);
    assertThat(told.get("hours").asDouble()).isBetween(0.12, 0.14);
    assertThat(told.get("derates").asInt()).isPositive();
    assertThat(told.get("rows")).hasSize(3);
    for (JsonNode row : told.get("rows")) {
      assertThat(keys(row))
          .containsExactly(
              "forecaster", "warned", "lead_p10_s", "lead_p50_s", "advisories", "false_per_h");
    }
    assertThat(told.get("rows").findValuesAsText("forecaster"))
        .containsExactly("steadypull", "threshold", "straight-line");
    assertThat(told.get("rows").get(0).get("warned").asInt())
        .isEqualTo(told.get("derates").asInt());
  }

  @Test
  void aTripNamedTwiceCountsOnceAndWhatNeverHappenedHasNoKey() throws Exception {
    JsonNode told = json("rehearse", cool, cool, "--json");

    assertThat(told.get("trips").asInt()).isEqualTo(1);
    assertThat(told.get("derates").asInt()).isZero();
    assertThat(keys(told.get("rows").get(1)))
        .containsExactly("forecaster", "warned", "advisories", "false_per_h");
  }

  @Test
  void peopleGetATable() {
    List<String> lines = desk.type("rehearse", hot).lines();

    assertThat(lines.getFirst()).matches("1 trip, 0\\.1 h, \\d derates?");
    assertThat(lines).anyMatch(line -> line.matches("steadypull +\\d/\\d +\\d+ s +\\d+ s .*"));
    assertThat(lines).anyMatch(line -> line.matches("threshold +\\d/\\d .*"));
    assertThat(lines.getLast()).startsWith("straight-line");
  }

  /** Rules that never say anything warn of nothing; the two beside it stay as they are. */
  @Test
  void otherRulesAreScoredInPlaceOfTheShippedOnes() throws Exception {
    String deaf =
        shippedRules().replaceAll("(?ms)^condition = ('''.*?'''|.*?)$", "condition = 'false'");
    Path rules = Files.writeString(folder.resolve("deaf.toml"), deaf);
    JsonNode shipped = json("rehearse", hot, "--json");
    JsonNode told = json("rehearse", hot, "--rules", rules.toString(), "--json");

    assertThat(told.get("rows").get(0).get("advisories").asInt()).isZero();
    assertThat(shipped.get("rows").get(0).get("advisories").asInt()).isPositive();
    assertThat(told.get("rows").get(1)).isEqualTo(shipped.get("rows").get(1));
  }

  @Test
  void wrongRulesAndUnknownTripsAreToldInFourPartsBeforeAnythingIsRun() throws Exception {
    Path broken = Files.writeString(folder.resolve("broken.toml"), "[[rule]]\nid = 5\n");
    Desk.Answer wrong = desk.type("rehearse", "--rules", broken.toString());
    assertThat(wrong.status()).isEqualTo(1);
    assertThat(wrong.out()).isEmpty();
    assertThat(wrong.err()).contains("broken.toml:2:", "No rule of this file");

    assertThat(desk.type("rehearse", "--rules", folder.resolve("no.toml").toString()).err())
        .contains("Could not read rules from", "found no file of that name. Check the path.");
    Desk.Answer unknown = desk.type("rehearse", hot, "nosuch");
    assertThat(unknown.status()).isEqualTo(1);
    assertThat(unknown.out()).isEmpty();
    assertThat(unknown.err()).contains("Could not find a trip", "nosuch");
  }

  @Test
  void anEmptyLibraryHasNothingToRehearse() throws Exception {
    Desk nobody = new Desk(folder.resolve("nobody"));
    Desk.Answer answer = nobody.type("rehearse");
    assertThat(answer.status()).isZero();
    assertThat(answer.out()).isEmpty();
    assertThat(answer.err()).contains("No trips in");

    JsonNode told = new ObjectMapper().readTree(nobody.type("rehearse", "--json").out());
    assertThat(told.get("trips").asInt()).isZero();
    assertThat(told.get("rows")).hasSize(3);
    assertThat(folder.resolve("nobody")).doesNotExist();
  }

  private static String shippedRules() throws IOException {
    try (InputStream rules =
        Objects.requireNonNull(
            RehearseCommandTest.class.getResourceAsStream("/steadypull/advice/rules.toml"))) {
      return new String(rules.readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  private static JsonNode json(String... command) throws Exception {
    Desk.Answer answer = desk.type(command);
    assertThat(answer.status()).as(answer.err()).isZero();
    return new ObjectMapper().readTree(answer.line());
  }

  private static List<String> keys(JsonNode node) {
    List<String> keys = new ArrayList<>();
    node.fieldNames().forEachRemaining(keys::add);
    return keys;
  }
}
