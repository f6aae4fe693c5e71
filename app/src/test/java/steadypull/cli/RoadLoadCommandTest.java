package steadypull.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The load of a grade and the grade of a load, as a tuner asks for them. */
class RoadLoadCommandTest {
  private static final ObjectMapper JSON = new ObjectMapper();

  @TempDir private Path folder;
  private Desk desk;

  @BeforeEach
  void enterARig() throws Exception {
    desk = new Desk(folder.resolve("library"));
    Path vehicle =
        Files.writeString(
            folder.resolve("mulga.json"),
            """
            {"steadypull_vehicle": 1, "name": "Mulga", "layout": "air-to-air",
             "rig": {"mass_kg": 11800, "drag_area_m2": 4.2, "rolling_resistance": 0.009},
             "driveline": {"gear_ratios": [1.78, 1.38, 1.0], "axle_ratio": 3.73,
                           "rated_engine_speed_r_min": 3000}}
            """);
    desk.type("vehicle", "Mulga", "--import", vehicle.toString(), "--tyre", "275/70R18");
  }

  private JsonNode json(String... arguments) throws Exception {
    Desk.Answer answer = desk.type(arguments);
    assertThat(answer.err()).isEmpty();
    assertThat(answer.status()).isZero();
    return JSON.readTree(answer.out());
  }

  // The worked road load of 11 800 kg at 45 mph on 5 %: 156.75 kW at the wheels in air of 1.145
  // kg/m3; dry air of 35 degC at sea level has 1.1455 (ISO 2533's constants), 0.4 N/kN more drag.
  @Test
  void theWorkedGradeTakesItsPower() throws Exception {
    JsonNode told =
        json(
            "road-load",
            "--vehicle",
            "Mulga",
            "--grade",
            "5",
            "--speed",
            "72.42",
            "--ambient",
            "35",
            "--json");

    assertThat(told.get("wheel_power_kW").asDouble()).isCloseTo(156.75, within(0.03));
    assertThat(told.get("wheel_torque_Nm").asDouble()).isCloseTo(3185.5, within(1.0));
    assertThat(told.get("engine_power_kW").asDouble()).isCloseTo(156.75 / 0.9, within(0.03));
    // first gear would turn the engine faster than its rated speed
    assertThat(told.get("gears")).hasSize(2);
    assertThat(told.get("gears").get(1).get("engine_speed_r_min").asDouble())
        .isCloseTo(1752.7, within(0.5));
  }

  @ParameterizedTest
  @CsvSource({"--wheel-power, 156.76", "--wheel-torque, 3185.6"})
  void aLoadOnTheRollersIsItsGrade(String option, String value) throws Exception {
    JsonNode told =
        json(
            "road-load",
            "--vehicle",
            "Mulga",
            option,
            value,
            "--speed",
            "72.42",
            "--ambient",
            "35",
            "--json");

    assertThat(told.get("grade_pct").asDouble()).isCloseTo(5, within(0.005));
    assertThat(told.get("cautions")).hasSizeGreaterThan(1);
    for (JsonNode same : told.get("same_power")) {
      double slower = same.get("speed_km_h").asDouble() - 72.42;
      assertThat((same.get("grade_pct").asDouble() - 5) * slower).isNegative();
    }
  }

  @Test
  void peopleReadItAtEightyColumns() {
    Desk.Answer answer =
        desk.type("road-load", "--vehicle", "Mulga", "--wheel-power", "150", "--speed", "80");

    assertThat(answer.err()).isEmpty();
    assertThat(answer.lines()).allMatch(line -> line.length() <= 80);
    assertThat(answer.out())
        .containsPattern("grade +\\d\\.\\d % at 80 km/h")
        .containsPattern("at the wheels +150 kW: grade \\d+, drag \\d+, rolling \\d+")
        .containsPattern("gear 3 +\\d+ r/min, \\d+ N\\.m")
        .containsPattern("same power +\\d+\\.\\d % at 50 km/h")
        .contains("two driven wheels", "no wind", "Strap the vehicle down");
  }

  @Test
  void whatNobodyEnteredIsAssumedAndTold() {
    Desk.Answer answer =
        desk.type(
            "road-load", "--mass", "7000", "--grade", "6", "--speed", "60", "--four-wheel-drive");

    assertThat(answer.out())
        .contains("drag area 4.2 m2", "rolling resistance 0.010", "four driven wheels")
        .doesNotContain("gear 1");
  }

  @Test
  void fourDrivenWheelsAskMoreOfTheEngine() throws Exception {
    double two =
        json("road-load", "--mass", "7000", "--grade", "6", "--speed", "60", "--json")
            .get("engine_power_kW")
            .asDouble();
    double four =
        json(
                "road-load",
                "--mass",
                "7000",
                "--grade",
                "6",
                "--speed",
                "60",
                "--four-wheel-drive",
                "--json")
            .get("engine_power_kW")
            .asDouble();

    assertThat(four / two).isCloseTo(0.90 / 0.87, within(1e-3));
  }

  @Test
  void downhillTheRigIsBraked() {
    Desk.Answer answer =
        desk.type("road-load", "--vehicle", "Mulga", "--grade", "-7", "--speed", "60");

    assertThat(answer.out()).contains("must be braked").doesNotContain("same power");
  }

  @Test
  void thinAirAndHeatTakeLessDrag() throws Exception {
    double low =
        json("road-load", "--mass", "7000", "--grade", "0", "--speed", "90", "--json")
            .get("wheel_power_kW")
            .asDouble();
    double high =
        json(
                "road-load",
                "--mass",
                "7000",
                "--grade",
                "0",
                "--speed",
                "90",
                "--altitude",
                "2000",
                "--ambient",
                "30",
                "--json")
            .get("wheel_power_kW")
            .asDouble();

    assertThat(high).isLessThan(low);
  }

  @Test
  void missingAndDoubledLoadsAreWrongUsage() {
    Desk.Answer none = desk.type("road-load", "--mass", "7000", "--speed", "60");
    Desk.Answer both =
        desk.type(
            "road-load", "--mass", "7000", "--speed", "60", "--grade", "5", "--wheel-power", "90");
    Desk.Answer nobody = desk.type("road-load", "--grade", "5", "--speed", "60");

    assertThat(none.status()).isEqualTo(2);
    assertThat(none.err())
        .contains("--wheel-torque, found none. Say one.", "road-load --help")
        .doesNotContain("expected what");
    assertThat(both.status()).isEqualTo(2);
    assertThat(both.err()).contains("found several");
    assertThat(nobody.status()).isEqualTo(2);
    assertThat(nobody.err()).contains("expected --vehicle or --mass, found neither");
  }

  @ParameterizedTest
  @CsvSource({
    "--grade, steep, per cent from -30 to 30",
    "--grade, NaN, per cent from -30 to 30",
    "--speed, 0, km/h from 5 to 200",
    "--ambient, 451, degC from -50 to 60",
    "--altitude, 9000, m from -400 to 5500",
    "--wheel-power, -3, kW from 1 to 2000",
    "--wheel-torque, 0, N.m from 10 to 100000"
  })
  void numbersOutOfBoundsAreRefusedWithTheirBounds(String option, String value, String expected) {
    Desk.Answer answer = desk.type("road-load", "--mass", "7000", option, value);

    assertThat(answer.status()).isEqualTo(2);
    assertThat(answer.err()).contains(option, expected, "found \"" + value + "\"");
  }

  @Test
  void whatCannotBeComputedSaysWhatToDo() {
    desk.type("vehicle", "Bare", "--layout", "air-to-air");

    assertFails(
        "expected a mass", "road-load", "--vehicle", "Bare", "--grade", "5", "--speed", "60");
    assertFails(
        "library, found", "road-load", "--vehicle", "Nobody", "--grade", "5", "--speed", "60");
    assertFails(
        "--tyre SIZE", "road-load", "--mass", "7000", "--wheel-torque", "900", "--speed", "60");
    assertFails(
        "more than its weight",
        "road-load",
        "--mass",
        "1000",
        "--wheel-power",
        "1900",
        "--speed",
        "20");
  }

  private void assertFails(String expected, String... arguments) {
    Desk.Answer answer = desk.type(arguments);
    assertThat(answer.status()).isEqualTo(1);
    assertThat(answer.out()).isEmpty();
    assertThat(answer.err()).startsWith("Could not").contains(expected, "found");
  }

  @Test
  void aTyreSizeGivesTheRadiusAndStaysWithTheVehicle() throws Exception {
    String file = folder.resolve("out.json").toString();
    Desk.Answer shown = desk.type("vehicle", "Mulga", "--export", file);
    Path rig = Files.writeString(folder.resolve("rig.json"), "{\"mass_kg\": 9000}");
    Desk.Answer other = desk.type("vehicle", "Mulga", "--rig", rig.toString());

    assertThat(shown.out())
        .contains("tyre radius 0.4088 m", "tyre size 275/70R18: free diameter 842 mm", "1.5 %");
    assertThat(Files.readString(Path.of(file))).contains("\"tyre_size\" : \"275/70R18\"");
    // the tyres stay on when another trailer is hitched
    assertThat(other.out()).contains("mass 9000.0 kg", "tyre radius 0.4088 m");
    assertThat(new Desk(folder.resolve("other")).type("vehicle", "Mulga", "--import", file).out())
        .isEqualTo(shown.out());
  }

  @Test
  void whatIsNoTyreSizeIsRefused() {
    Desk.Answer answer = desk.type("vehicle", "Mulga", "--tyre", "round");

    assertThat(answer.status()).isEqualTo(2);
    assertThat(answer.err()).contains("--tyre", "275/70R18", "found \"round\"", "tyre_radius_m");
  }

  @Test
  void itNeedsNoLibrary() {
    Desk.Answer answer =
        Desk.typeOnly(
            Map.of(),
            "--library",
            folder.resolve("nowhere").toString(),
            "road-load",
            "--mass",
            "7000",
            "--grade",
            "6",
            "--speed",
            "60");

    assertThat(answer.status()).isZero();
    assertThat(folder.resolve("nowhere")).doesNotExist();
  }
}
