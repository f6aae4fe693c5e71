package steadypull.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;

/** One simulated drive up the hot grade, and every command that looks at it afterwards. */
@Execution(ExecutionMode.CONCURRENT)
class RecordedTripTest {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final List<String> EVENT_KEYS =
      List.of(
          "time_s",
          "event",
          "rule",
          "level",
          "channel",
          "value",
          "limit",
          "probability_180s",
          "seconds_to_limit",
          "seconds_to_limit_p10",
          "seconds_to_limit_p90",
          "settles_at",
          "text");

  private static final Map<List<String>, List<JsonNode>> ANSWERED = new HashMap<>();

  @TempDir private static Path folder;
  private static Desk desk;
  private static Desk.Answer recorded;
  private static String trip;

  @BeforeAll
  static void recordADrive() {
    desk = new Desk(folder.resolve("library"));
    recorded =
        desk.type(
            "record",
            "--port",
            "demo:long-hot-grade?speed=max&start=300",
            "--vehicle",
            "Wattle 2",
            "--label",
            "baseline",
            "--for",
            "5m");
    trip = recorded.out().strip();
  }

  /** What advise prints; the same question is asked only once. */
  private static List<JsonNode> advised(String... arguments) throws Exception {
    List<String> question = List.of(arguments);
    if (!ANSWERED.containsKey(question)) {
      ANSWERED.put(question, List.copyOf(ask(arguments)));
    }
    return ANSWERED.get(question);
  }

  private static List<JsonNode> ask(String... arguments) throws Exception {
    List<String> all = new ArrayList<>(List.of("advise"));
    all.addAll(List.of(arguments));
    Desk.Answer answer = desk.type(all.toArray(String[]::new));
    assertThat(answer.status()).as(answer.err()).isZero();
    List<JsonNode> lines = new ArrayList<>();
    for (String line : answer.lines()) {
      lines.add(JSON.readTree(line));
    }
    return lines;
  }

  private static Path exported(String name, String... options) {
    Path file = folder.resolve(name);
    List<String> all = new ArrayList<>(List.of("export", trip, "--to", file.toString()));
    all.addAll(List.of(options));
    Desk.Answer answer = desk.type(all.toArray(String[]::new));
    assertThat(answer.status()).as(answer.err()).isZero();
    return file;
  }

  private static List<String> keys(JsonNode node) {
    List<String> keys = new ArrayList<>();
    node.fieldNames().forEachRemaining(keys::add);
    return keys;
  }

  @Test
  void theIdStandsAloneOnStandardOutputAndTheDriveIsToldOnStandardError() {
    assertThat(recorded.status()).isZero();
    assertThat(recorded.lines()).containsExactly(trip);
    assertThat(recorded.err())
        .contains("connected: ")
        .containsPattern("\\d+\\.\\d readings/s, \\d+ of \\d+ channels fresh")
        .containsPattern("0:0\\d:\\d\\d  caution raised charge_air_temp_out: ");
  }

  /** Contracts, "JSON forms". */
  @Test
  void tripsAsJsonHaveTheKeysOfTheContract() throws Exception {
    JsonNode trips = JSON.readTree(desk.type("trips", "--json", "--find", "BASELINE").out());

    assertThat(trips).hasSize(1);
    JsonNode only = trips.get(0);
    assertThat(keys(only))
        .containsExactly(
            "id",
            "vehicle",
            "start",
            "duration_s",
            "distance_m",
            "samples",
            "channels",
            "gaps",
            "sealed",
            "label",
            "origin",
            "tags",
            "note");
    assertThat(only.get("id").asText()).isEqualTo(trip);
    assertThat(only.get("vehicle").asText()).isEqualTo("Wattle 2");
    assertThat(only.get("start").asText()).matches("2026-07-15T17:\\d\\d:\\d\\d(\\.\\d+)?Z");
    assertThat(only.get("duration_s").asDouble()).isEqualTo(300);
    assertThat(only.get("gaps")).isEmpty();
    assertThat(only.get("sealed").asBoolean()).isTrue();
    assertThat(only.get("channels")).extracting(JsonNode::asText).contains("road_grade");
  }

  @Test
  void aTextThatNoTripMentionsFindsNoneAndSaysSo() {
    Desk.Answer answer = desk.type("trips", "--find", "no such words");

    assertThat(answer.status()).isZero();
    assertThat(answer.out()).isEmpty();
    assertThat(answer.err()).contains("\"no such words\"");
  }

  /** Contracts, "Commands": keys in this order, absent where they do not apply. */
  @Test
  void adviceHasTheKeysOfTheContractInTheirOrder() throws Exception {
    List<JsonNode> lines = advised(trip);

    assertThat(lines).hasSizeGreaterThan(2);
    for (JsonNode line : lines) {
      assertThat(EVENT_KEYS).containsSubsequence(keys(line));
    }
    JsonNode caution =
        lines.stream()
            .filter(line -> line.path("level").asText().equals("caution"))
            .findFirst()
            .orElseThrow();
    assertThat(keys(caution))
        .contains("rule", "channel", "value", "limit", "probability_180s", "settles_at", "text");
    assertThat(caution.get("event").asText()).isEqualTo("raised");
  }

  @Test
  void theLastLineIsTheEndAndHoldsOnlyItsTime() throws Exception {
    JsonNode end = advised(trip).getLast();

    assertThat(end).hasToString("{\"time_s\":300.0,\"event\":\"end\"}");
  }

  @Test
  void adviceOfTheTripIsWhatTheTerminalSaidDuringTheDrive() throws Exception {
    List<String> live = ToldAdvice.live(recorded.err());

    assertThat(live).isNotEmpty();
    assertThat(ToldAdvice.replayed(advised(trip))).isEqualTo(live);
  }

  /** Contracts: horizons 30, 60, 120, 300, 600 s for each thermal channel, p05 .. p95. */
  @Test
  void forecastsComeAtTheIntervalWithEveryHorizonAndOrderedQuantiles() throws Exception {
    List<JsonNode> forecasts =
        advised(trip, "--forecasts", "60").stream()
            .filter(line -> line.get("event").asText().equals("forecast"))
            .toList();

    assertThat(forecasts).isNotEmpty();
    for (JsonNode line : forecasts) {
      assertThat(keys(line))
          .containsExactly(
              "time_s", "event", "channel", "horizon_s", "p05", "p10", "p50", "p90", "p95");
      assertThat(line.get("time_s").asDouble() % 60).isZero();
      assertThat(
              List.of(
                  line.get("p05").asDouble(),
                  line.get("p10").asDouble(),
                  line.get("p50").asDouble(),
                  line.get("p90").asDouble(),
                  line.get("p95").asDouble()))
          .isSorted();
    }
    assertThat(forecasts)
        .filteredOn(line -> line.get("time_s").asDouble() == 240)
        .filteredOn(line -> line.get("channel").asText().equals("charge_air_temp_out"))
        .extracting(line -> line.get("horizon_s").asInt())
        .containsExactly(30, 60, 120, 300, 600);
  }

  @Test
  void forecastsChangeNothingOfTheAdvice() throws Exception {
    List<JsonNode> without = advised(trip);

    assertThat(advised(trip, "--forecasts", "60"))
        .filteredOn(line -> !line.get("event").asText().equals("forecast"))
        .isEqualTo(without);
  }

  /** A table carries no end of its own; all else that is said is the same. */
  @Test
  void adviceOnTheExportedTableIsTheAdviceOnTheTrip() throws Exception {
    Path table = exported("same.csv");
    List<JsonNode> ofTable = advised(table.toString(), "--vehicle", "Wattle 2");
    List<JsonNode> ofTrip = advised(trip);

    assertThat(ofTable.subList(0, ofTable.size() - 1))
        .isEqualTo(ofTrip.subList(0, ofTrip.size() - 1));
  }

  @Test
  void derivedColumnsOfATableAreComputedAnew() throws Exception {
    List<String> beginning =
        Files.readAllLines(exported("whole.csv", "--measured-only")).subList(0, 3000);
    Path measured = Files.write(folder.resolve("measured.csv"), beginning);
    Path wrong = folder.resolve("wrong.csv");
    List<String> rows = new ArrayList<>();
    for (String row : beginning) {
      rows.add(row + (rows.isEmpty() ? ",road_grade[%],wheel_power[kW]" : ",-25,900"));
    }
    Files.write(wrong, rows);

    List<JsonNode> right = advised(measured.toString(), "--forecasts", "30");
    assertThat(right).hasSizeGreaterThan(30);
    assertThat(advised(wrong.toString(), "--forecasts", "30")).isEqualTo(right);
  }

  @Test
  void anotherLimitOrLanguageChangesWhatIsSaid() throws Exception {
    List<JsonNode> strict = advised(trip, "--limit", "engine_oil_temp=60");
    List<JsonNode> german = advised(trip, "--language", "de");

    assertThat(strict)
        .anySatisfy(
            line -> {
              assertThat(line.path("channel").asText()).isEqualTo("engine_oil_temp");
              assertThat(line.path("limit").asDouble()).isEqualTo(60);
            });
    assertThat(german)
        .extracting(line -> line.path("text").asText())
        .anyMatch(text -> text.contains("Ladeluft"));
    assertThat(german)
        .extracting(line -> line.get("time_s"))
        .isEqualTo(advised(trip).stream().map(line -> line.get("time_s")).toList());
  }
}
