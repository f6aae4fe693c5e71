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

/** What is said of a trip, from its record to the list. */
class TripCommandTest {
  private static final ObjectMapper JSON = new ObjectMapper();

  @TempDir private Path folder;
  private Desk desk;
  private String trip;

  @BeforeEach
  void takeATrip() throws Exception {
    desk = new Desk(folder.resolve("library"));
    Path table =
        Files.writeString(
            folder.resolve("run.csv"),
            "time[s],vehicle_speed[km/h],tow_ball_load[kg]\n0,80,90\n60,80,91\n");
    trip =
        desk.type("import", table.toString(), "--vehicle", "Wattle 2", "--note", "first try")
            .line();
  }

  private static List<String> keys(JsonNode node) {
    List<String> keys = new ArrayList<>();
    node.fieldNames().forEachRemaining(keys::add);
    return keys;
  }

  @Test
  void aTripIsShownInFull() {
    Desk.Answer answer = desk.type("trip", trip);

    assertThat(answer.status()).isZero();
    assertThat(answer.err()).isEmpty();
    assertThat(answer.lines()).allMatch(line -> line.length() <= 80);
    assertThat(answer.out())
        .containsPattern("trip +" + trip)
        .containsPattern("vehicle +Wattle 2")
        .containsPattern("start +20\\d\\d-\\d\\d-\\d\\d \\d\\d:\\d\\d:\\d\\d ")
        .containsPattern("length +0:01:00")
        .containsPattern("note +first try")
        .containsPattern("channels +vehicle_speed\\[km/h], tow_ball_load\\[kg]")
        .containsPattern("gaps +0:00:00 to 0:01:00")
        .containsPattern("source +run.csv")
        .containsPattern("software +0.0-test")
        .doesNotContain("fitted", "adapter");
  }

  @Test
  void whatIsSaidIsToldShownAndFound() throws Exception {
    Desk.Answer answer =
        desk.type(
            "trip",
            trip,
            "--label",
            "after",
            "--note",
            "Second run.\nHot.",
            "--tag",
            "north ramp",
            "--tag",
            "warranty",
            "--fitted",
            "second cooler",
            "--outside",
            "gusty",
            "--outside-temp",
            "34.5",
            "--mass",
            "4200",
            "--trailer-mass",
            "1500");

    assertThat(answer.status()).as(answer.err()).isZero();
    assertThat(answer.err().lines())
        .containsExactly(
            "Changed label: \"after\", was nothing.",
            "Changed note: \"Second run. Hot.\", was \"first try\".",
            "Changed tags: \"north ramp, warranty\", was nothing.",
            "Changed fitted: \"second cooler\", was nothing.",
            "Changed outside: \"gusty\", was nothing.",
            "Changed outside temp, degC: \"34.5\", was nothing.",
            "Changed mass, kg: \"4200.0\", was nothing.",
            "Changed trailer mass, kg: \"1500.0\", was nothing.");
    assertThat(answer.out())
        .contains("note          Second run.\n              Hot.\n")
        .contains("4.2 t in all, trailer 1.5 t");

    for (String word : List.of("SECOND RUN", "ramp", "cooler", "gusty", "after", "wattle")) {
      assertThat(desk.type("trips", "--find", word).lines()).as(word).hasSize(1);
    }
    assertThat(desk.type("trips", "--tag", "Warranty").lines()).hasSize(1);
    assertThat(desk.type("trips", "--tag", "warranty", "--tag", "x").out()).isEmpty();
    assertThat(desk.type("trips", "--vehicle", "wattle 2").lines()).hasSize(1);
    assertThat(desk.type("trips", "--vehicle", "wattle").err()).contains("No trip");

    desk.type("trip", trip, "--untag", "warranty", "--outside-temp", "none", "--label", "");
    JsonNode told = JSON.readTree(desk.type("trip", trip, "--json").out());
    assertThat(told.get("tags")).extracting(JsonNode::asText).containsExactly("north ramp");
    assertThat(told.has("outside_degC")).isFalse();
    assertThat(told.get("label").asText()).isEmpty();
    assertThat(told.get("fitted").asText()).isEqualTo("second cooler");
    assertThat(told.get("rig").get("mass_kg").asDouble()).isEqualTo(4200);
    assertThat(told.get("rig").get("trailer_mass_kg").asDouble()).isEqualTo(1500);
  }

  @Test
  void aTrailerAsHeavyAsBothTogetherIsRefusedAndNothingChanges() {
    desk.type("trip", trip, "--mass", "4200");
    Desk.Answer answer = desk.type("trip", trip, "--trailer-mass", "4200", "--label", "after");

    assertThat(answer.status()).isEqualTo(1);
    assertThat(answer.err())
        .startsWith("Could not set the masses: trailer_mass_kg lies under mass_kg")
        .contains("4200.0; found 4200.0", "Give --mass and --trailer-mass together.");
    assertThat(desk.type("trip", trip).out()).doesNotContain("trailer", "after");
    assertThat(desk.type("trip", trip, "--trailer-mass", "heavy").status()).isEqualTo(2);
  }

  @Test
  void theTrailerOfAVehicleIsKeptAndTravelsWithItsFile() {
    String file = folder.resolve("wattle.json").toString();
    Desk.Answer set = desk.type("vehicle", "Wattle 2", "--mass", "7800", "--trailer-mass", "3200");
    assertThat(set.lines()).contains("mass 7800.0 kg", "trailer mass 3200.0 kg");

    desk.type("vehicle", "Wattle 2", "--export", file);
    assertThat(desk.type("vehicle", "Wattle 3", "--import", file).lines())
        .contains("trailer mass 3200.0 kg");
    assertThat(desk.type("vehicle", "Wattle 2", "--trailer-mass", "7800").err())
        .contains("Nothing was changed");
  }

  @Test
  void theSameSaidAgainChangesNothing() {
    desk.type("trip", trip, "--tag", "hot", "--label", "after");
    assertThat(desk.type("trip", trip, "--tag", "hot", "--label", "after").err()).isEmpty();
  }

  @Test
  void machinesGetAnObjectWithStableKeys() throws Exception {
    desk.type("trip", trip, "--outside-temp", "30");
    JsonNode told = JSON.readTree(desk.type("trip", trip, "--json").out());

    assertThat(keys(told))
        .containsSubsequence(
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
            "note",
            "headers",
            "fitted",
            "outside",
            "outside_degC",
            "adapter",
            "protocol",
            "vehicle_number_hash",
            "source",
            "software_version",
            "rig",
            "marks",
            "events");
    assertThat(told.get("headers"))
        .extracting(JsonNode::asText)
        .containsExactly("vehicle_speed[km/h]", "tow_ball_load[kg]");
    assertThat(told.get("start").asText()).endsWith("Z");
  }

  @Test
  void aRecordedTripTellsItsLocalTimeItsLinkAndWhatWasSaidAtItsStart() throws Exception {
    String recorded =
        desk.type(
                "record",
                "--quiet",
                "--port",
                "demo:cool-day?speed=max",
                "--vehicle",
                "Wattle 2",
                "--for",
                "10s",
                "--tag",
                "morning",
                "--note",
                "as delivered",
                "--outside-temp",
                "18",
                "--mass",
                "5100",
                "--trailer-mass",
                "2300")
            .line();
    JsonNode told = JSON.readTree(desk.type("trip", recorded, "--json").out());

    assertThat(told.get("start_local").asText()).matches("2026-07-1\\dT.*(Z|[+-]\\d\\d:\\d\\d)");
    assertThat(told.get("protocol").asText()).isNotEmpty();
    assertThat(told.get("tags")).extracting(JsonNode::asText).containsExactly("morning");
    assertThat(told.get("note").asText()).isEqualTo("as delivered");
    assertThat(told.get("outside_degC").asDouble()).isEqualTo(18);
    assertThat(told.get("rig").get("mass_kg").asDouble()).isEqualTo(5100);
    assertThat(told.get("rig").get("trailer_mass_kg").asDouble()).isEqualTo(2300);
    assertThat(told.get("events").get("link").asInt()).isPositive();
  }

  @Test
  void aTripIsThrownAwayOnlyWhenThatIsConfirmed() {
    Desk.Answer asked = desk.type("trip", trip, "--delete");
    assertThat(asked.status()).isEqualTo(2);
    assertThat(asked.err()).contains("--yes", "gone for good");
    assertThat(desk.type("trips").lines()).hasSize(1);

    Desk.Answer thrown = desk.type("trip", trip, "--delete", "--yes");
    assertThat(thrown.status()).isZero();
    assertThat(thrown.err()).contains("Threw trip " + trip + " away");
    assertThat(desk.type("trips").out()).isEmpty();
  }

  /** A long note does not break the list, and nothing that was said can steer the terminal. */
  @Test
  void listsStayAlignedAndPlain() {
    String hostile = "a".repeat(50) + "\n\tb ".repeat(50);
    desk.type("trip", trip, "--note", hostile, "--label", "x");
    String line = desk.type("trips").out();

    assertThat(line.lines()).hasSize(1);
    assertThat(line.strip()).hasSizeLessThan(180).endsWith("...");
    assertThat(Printable.line("red\u001b[31m \u202eabc")).isEqualTo("red\\u001b[31m \\u202eabc");
    assertThat(Printable.line("12345678", 7)).isEqualTo("1234...");
    assertThat(Printable.line("1234567", 7)).isEqualTo("1234567");
  }
}
