package steadypull.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadypull.channel.Channels;
import steadypull.review.SeasonTripKept;

/** What people and machines are told of a trip's climbs. */
class ClimbsCommandTest {
  private static final ObjectMapper JSON = new ObjectMapper();

  @TempDir private Path folder;

  private Desk.Answer type(String... arguments) {
    return new Desk(folder).type(arguments);
  }

  @Test
  void aHotClimbIsToldInLinesThatFit() throws Exception {
    String trip = SeasonTripKept.in(folder, "2026-05-21");

    Desk.Answer answer = type("climbs", trip);

    assertThat(answer.status()).isZero();
    assertThat(answer.err()).isEmpty();
    assertThat(answer.lines()).allMatch(line -> line.length() <= 80);
    assertThat(answer.lines().getFirst()).startsWith("climb ").contains("rise", "steepest");
    assertThat(answer.lines().get(1))
        .matches(
            "climb 1, km 5 +0:0\\d:\\d\\d +0:08:\\d\\d +11\\.\\d km +6\\d\\d m +6\\.\\d % +6\\.\\d"
                + " % +8\\d km/h");
    assertThat(answer.out())
        .containsPattern("id c\\w{7}, 1\\d\\.\\d kWh at the wheels, power cut for 0:0\\d:\\d\\d")
        .containsPattern("charge_air_temp_out 10\\d° \\(\\d° over the limit\\)")
        .containsPattern("engine_coolant_temp \\d+° \\(\\d+° under the limit\\)");
    assertThat(type("climbs", trip.substring(0, 8), "--units", "imperial").lines().get(1))
        .matches("climb 1, mi 3 .* [67]\\.\\d mi +2,[12]\\d\\d ft .* mph");
  }

  @Test
  void machinesGetTheKeysOfTheContractInTheirOrder() throws Exception {
    String trip = SeasonTripKept.in(folder, "2026-05-21");

    JsonNode climb = JSON.readTree(type("climbs", trip, "--json").out()).get(0);

    List<String> keys = new ArrayList<>();
    climb.fieldNames().forEachRemaining(keys::add);
    assertThat(keys)
        .startsWith(
            "id",
            "climb_id",
            "start_s",
            "end_s",
            "start_m",
            "length_m",
            "rise_m",
            "mean_grade_pct",
            "steepest_grade_pct",
            "mean_speed_km_h",
            "peaks",
            "least_headroom_degC",
            "derated_s",
            "wheel_energy_kWh",
            "sustainable_power_kW");
    double holds = climb.get("sustainable_power_kW").asDouble();
    assertThat(climb.get("sustainable_power_limited_by").asText()).isEqualTo("charge_air_temp_out");
    assertThat(holds)
        .as("the climb asked for 19 kWh in 8 min, 141 kW, and lost power")
        .isBetween(100.0, 145.0)
        .isBetween(
            climb.get("sustainable_power_p10_kW").asDouble(),
            climb.get("sustainable_power_p90_kW").asDouble());
    assertThat(climb.get("id").asText()).isEqualTo(trip + "/1");
    assertThat(climb.get("mean_grade_pct").asDouble())
        .isCloseTo(
            100 * climb.get("rise_m").asDouble() / climb.get("length_m").asDouble(), within(0.01));
    assertThat(climb.get("mean_speed_km_h").asDouble())
        .isCloseTo(
            3.6
                * climb.get("length_m").asDouble()
                / (climb.get("end_s").asDouble() - climb.get("start_s").asDouble()),
            within(0.1));
    double over = climb.get("least_headroom_degC").get("charge_air_temp_out").asDouble();
    assertThat(climb.get("peaks").get("charge_air_temp_out").asDouble())
        .isCloseTo(97 - over, within(0.05));
    assertThat(climb.get("derated_s").asDouble()).isPositive();
    // whoever prints no unit system prints metric ones
    assertThat(type("climbs", trip, "--json", "--units", "imperial").out())
        .isEqualTo(type("climbs", trip, "--json").out());
  }

  @Test
  void twoVehiclesTellTheSameClimb() throws Exception {
    String recovery = SeasonTripKept.in(folder, "2026-06-15");
    String van = SeasonTripKept.in(folder, "2026-06-24");

    JsonNode one = JSON.readTree(type("climbs", recovery, "--json").out()).get(0);
    JsonNode other = JSON.readTree(type("climbs", van, "--json").out()).get(0);

    assertThat(one.get("climb_id")).isEqualTo(other.get("climb_id"));
  }

  @Test
  void withoutPositionsThereAreClimbsButNoIdentity() throws Exception {
    String trip =
        SeasonTripKept.in(
            folder, "2026-05-21", sample -> !Channels.located().contains(sample.channel()));

    assertThat(type("climbs", trip).out()).contains("climb 1, km ", "no place known");
    JsonNode climb = JSON.readTree(type("climbs", trip, "--json").out()).get(0);
    assertThat(climb.has("climb_id")).isFalse();
    assertThat(climb.get("rise_m").asDouble()).isGreaterThan(40);
  }

  @Test
  void aDynamometerIsLeftOutAndSaidSo() throws Exception {
    String trip = SeasonTripKept.in(folder, "2026-03-10");

    Desk.Answer answer = type("climbs", trip);

    assertThat(answer.status()).isZero();
    assertThat(answer.out()).isEmpty();
    assertThat(answer.err()).contains("Left out ", "air pressure stayed", "dynamometer");
  }

  @Test
  void whyThereIsNoneIsSaidInASentence() throws Exception {
    String level = SeasonTripKept.in(folder, "2026-08-06");
    assertThat(type("climbs", level).err()).contains("none rises 40 m over 500 m");
    assertThat(type("climbs", level, "--json").out()).isEqualTo("[]\n");

    String speed = table("time[s],vehicle_speed[km/h]\n" + rows("80"));
    assertThat(type("climbs", speed).err()).contains("neither a receiver's altitude nor torque");
    assertThat(type("climbs", speed).status()).isZero();

    String still = table("time[s],engine_coolant_temp[degC]\n" + rows("88"));
    assertThat(type("climbs", still).err()).contains("expected the channel vehicle_speed");
  }

  private String table(String text) throws Exception {
    Path file = Files.writeString(folder.resolve("run.csv"), text);
    return type("import", file.toString(), "--vehicle", "Wattle 2").line();
  }

  private static String rows(String value) {
    StringBuilder rows = new StringBuilder();
    for (int second = 0; second < 300; second++) {
      rows.append(second).append(',').append(value).append('\n');
    }
    return rows.toString();
  }

  @Test
  void aTripThatIsNotThereAndWrongUsageAreToldApart() throws Exception {
    SeasonTripKept.in(folder, "2026-06-15", sample -> sample.timeMicros() < 5_000_000);

    assertThat(type("climbs", "2031").status()).isEqualTo(1);
    assertThat(type("climbs", "2031").err()).contains("2031");
    assertThat(type("climbs").status()).isEqualTo(2);
  }
}
