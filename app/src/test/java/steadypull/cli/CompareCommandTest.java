package steadypull.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;

/** From tables on disk to a verdict, over a change whose truth is known. */
@Execution(ExecutionMode.CONCURRENT)
class CompareCommandTest {
  private static final double JOULES_BEFORE = 18_000;
  private static final double JOULES_AFTER = 36_000;
  private static final double WATTS_BEFORE = 100;
  private static final double WATTS_AFTER = 140;

  @TempDir Path folder;

  private Desk desk;
  private final List<String> before = new ArrayList<>();
  private final List<String> after = new ArrayList<>();

  @BeforeEach
  void write() throws Exception {
    desk = new Desk(folder.resolve("library"));
    for (int i = 0; i < 3; i++) {
      Path first = folder.resolve("before" + i + ".csv");
      Path then = folder.resolve("after" + i + ".csv");
      before.add(InventedPulls.write(first, JOULES_BEFORE, WATTS_BEFORE, 20 + i, i).toString());
      after.add(InventedPulls.write(then, JOULES_AFTER, WATTS_AFTER, 21 + i, 7 + i).toString());
    }
  }

  private Desk.Answer compare(List<String> options) {
    List<String> words = new ArrayList<>(List.of("compare", "--channel", "charge_coolant_temp"));
    words.addAll(options);
    return desk.type(words.toArray(String[]::new));
  }

  private List<String> sides() {
    List<String> words = new ArrayList<>();
    words.add("--before");
    words.addAll(before);
    words.add("--after");
    words.addAll(after);
    return words;
  }

  private List<String> sidesOnDays() {
    List<String> words = sides();
    for (int i = 0; i < 3; i++) {
      words.addAll(List.of("--day", before.get(i) + "=2026-03-1" + i));
      words.addAll(List.of("--day", after.get(i) + "=2026-05-1" + i));
    }
    return words;
  }

  private static JsonNode json(Desk.Answer answer) throws Exception {
    assertThat(answer.status()).as(answer.err()).isZero();
    return new ObjectMapper().readTree(answer.line());
  }

  // That intervals hold is shown over many pairs elsewhere; here, that figures stand at their keys.
  @Test
  void figuresStandAtTheirKeysNearTheTruth() throws Exception {
    List<String> words = sidesOnDays();
    words.addAll(List.of("--json", "--limit", "90", "--ambient", "30"));
    JsonNode found = json(compare(words));

    assertThat(found.get("verdict").asText()).isEqualTo("proven");
    assertThat(found.get("direction").asText()).isEqualTo("cooler");
    assertThat(found.get("sentence").asText()).startsWith("Proven: charge coolant settles");
    assertNear(found.get("conductance_before_W_per_K"), WATTS_BEFORE);
    assertNear(found.get("conductance_after_W_per_K"), WATTS_AFTER);
    assertNear(found.get("heat_capacity_before_J_per_K"), JOULES_BEFORE);
    assertNear(found.get("heat_capacity_after_J_per_K"), JOULES_AFTER);
    assertThat(found.get("limit_degC").asDouble()).isEqualTo(90);
    assertThat(found.get("outside_degC").asDouble()).isEqualTo(30);
  }

  private static void assertNear(JsonNode interval, double truth) {
    double middle = interval.get("p50").asDouble();
    assertThat(middle).isCloseTo(truth, Offset.offset(0.2 * truth));
    assertThat(middle).isBetween(interval.get("p05").asDouble(), interval.get("p95").asDouble());
  }

  @Test
  void keysAreThoseOfTheContractInItsOrder() throws Exception {
    List<String> words = sides();
    words.add("--json");
    JsonNode found = json(compare(words));

    assertThat(found.fieldNames())
        .toIterable()
        .containsSubsequence(
            "channel",
            "verdict",
            "delay_verdict",
            "sentence",
            "settled_gain_degC",
            "smallest_detectable_degC",
            "direction",
            "at",
            "lasts_degC",
            "delays_degC",
            "heat_capacity_before_J_per_K",
            "heat_capacity_after_J_per_K",
            "conductance_before_W_per_K",
            "conductance_after_W_per_K",
            "caveats",
            "runs",
            "rejected");
    assertThat(found.get("at"))
        .extracting(time -> time.get("s").asInt())
        .containsExactly(15, 30, 60, 90, 120);
    assertThat(found.get("at").get(0).fieldNames())
        .toIterable()
        .containsExactly("s", "before_degC", "after_degC", "gain_degC", "measured");
    assertThat(found.get("runs")).hasSize(6);
  }

  @Test
  void keyThatIsAbsentHasACaveatThatSaysWhy() throws Exception {
    List<String> words = sides();
    words.addAll(List.of("--json", "--limit", "400"));
    JsonNode found = json(compare(words));

    assertThat(found.has("time_to_limit_before_s")).isFalse();
    assertThat(found.has("equivalent_within_degC")).isFalse();
    assertThat(found.get("caveats"))
        .extracting(JsonNode::asText)
        .contains(
            "Before the change it would settle under its limit, so there is no time to it.",
            "These runs do not exclude a difference, so no bound is told within which both sides"
                + " are alike.");
  }

  // Nothing says that the tables were written on two days: likely is then all that can be claimed.
  @Test
  void tablesWithoutADayCountAsOneDay() throws Exception {
    Desk.Answer answer = compare(sides());

    assertThat(answer.status()).isZero();
    assertThat(answer.lines().getFirst()).startsWith("Likely: charge coolant settles");
    assertThat(answer.out())
        .contains("To prove it: runs on two days a side, or before, after and before again.")
        .contains("before0.csv", "after2.csv", "day not told");
  }

  @Test
  void beforeAfterBeforeKeepsItsOrderAndProves() throws Exception {
    List<String> words =
        new ArrayList<>(List.of("--before", before.get(0), before.get(1), "--after"));
    words.addAll(after);
    words.addAll(List.of("--before", before.get(2)));

    assertThat(compare(words).lines().getFirst()).startsWith("Proven:");
  }

  @Test
  void partsOfTripsOfTheLibraryAreComparedToo() throws Exception {
    String first = desk.type("import", before.get(0), "--vehicle", "Van 2").line();
    String then = desk.type("import", after.get(0), "--vehicle", "Van 2").line();

    JsonNode found =
        json(compare(List.of("--before", first, "--after", then + "@100-820", "--json")));

    assertThat(found.get("runs"))
        .extracting(run -> run.get("trip").asText())
        .containsExactly(first, then);
    assertThat(found.get("verdict").asText()).isNotEqualTo("proven");
  }

  @Test
  void germanReadersGetTheirSentence() {
    List<String> words = sides();
    words.addAll(List.of("--language", "de"));

    assertThat(compare(words).lines().getFirst())
        .startsWith("Wahrscheinlich: der Ladekreis wird bei gleicher Last auf Dauer")
        .contains("kühler");
    assertThat(compare(words).out())
        .contains("Grenzen dieser Aussage", "Niemand notierte")
        .doesNotContain("Nobody", "cannot", "the runs");
  }

  @Test
  void notesOfAJobLeaveARunOutWithTheirReason() throws Exception {
    Path job =
        Files.writeString(
            folder.resolve("job.toml"),
            """
            name = "Second radiator"
            wind = "none"
            [[run]]
            source = "before1.csv"
            left_out = "the fan had been moved"
            """);
    List<String> words = sides();
    words.addAll(List.of("--job", job.toString()));

    assertThat(compare(words).out()).contains("left out: the fan had been moved");
  }

  @Test
  void wrongUsageIsToldInFourPartsAndEndsWithTwo() {
    String one = before.get(0);
    assertMisuse(List.of("--before", one), "expected trips of both sides", "no --after TRIP");
    assertMisuse(List.of("--before", "--after", one), "expected --before TRIP", "Add it");
    assertMisuse(List.of("--before", one, "--after", one), "expected every trip once", "found");
    assertMisuse(
        List.of("--before", "a@9-3", "--after", one), "the end after the beginning", "a@9-3");
    assertMisuse(
        List.of("--before", one, "--after", after.get(0), "--day", "c.csv=2026-05-01"),
        "expected the day of a table that is compared",
        "c.csv");
    assertMisuse(
        List.of("--before", one, "--after", after.get(0), "--day", one + "=1st of May"),
        "expected FILE=YYYY-MM-DD",
        "1st of May");
    assertMisuse(
        List.of("--before", one, "--after", after.get(0), "--limit", "hot"), "from -40 to 1200");
    assertThat(
            desk.type("compare", "--before", one, "--after", one, "--channel", "vehicle_speed")
                .err())
        .contains("expected a temperature channel (engine_coolant_temp", "\"vehicle_speed\"");
  }

  private void assertMisuse(List<String> words, String... said) {
    Desk.Answer answer = compare(words);
    assertThat(answer.status()).isEqualTo(2);
    assertThat(answer.out()).isEmpty();
    assertThat(answer.err()).startsWith("Could not").contains(said);
  }

  @Test
  void tableThatCannotBeReadFailsWithTheReason() {
    Desk.Answer answer = compare(List.of("--before", "none.csv", "--after", after.get(0)));

    assertThat(answer.status()).isEqualTo(1);
    assertThat(answer.err()).contains("Could not read none.csv", "no file of that name");
    assertThat(folder.resolve("library")).doesNotExist();
  }
}
