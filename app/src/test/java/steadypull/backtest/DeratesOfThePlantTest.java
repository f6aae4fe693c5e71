package steadypull.backtest;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.demo.DemoWorld;
import steadypull.demo.road.Scenario;
import steadypull.vehicle.Vehicle;
import steadypull.vehicle.VehicleJson;

/**
 * Derates that the plant knows of, against those that are told from its sensors: on worlds that
 * nothing was fitted to, and on the demo drives. What vehicles tell differs, and so does what can
 * be found.
 */
@Execution(ExecutionMode.CONCURRENT)
class DeratesOfThePlantTest {
  /** A derate that a driver feels: 8 points for 20 s and more. */
  private static final double DEEP_PERCENT = 8;

  private static final int LONG_SECONDS = 20;

  /** Channels whose heat costs power in the plant. */
  private static final Set<Channel> CAUSES =
      Set.of(
          Channels.CHARGE_AIR_TEMP_OUT, Channels.CHARGE_COOLANT_TEMP, Channels.ENGINE_COOLANT_TEMP);

  /**
   * Fifteen worlds have few derates, so the shares are looser than those of the table in
   * DEVELOPERS.md.
   */
  @ParameterizedTest
  @CsvSource({
    "BOTH_TORQUES, 0.9, 0.65, 60",
    "PEDAL_AND_FUEL, 0.75, 0.65, 120",
    "PEDAL_AND_LOAD, 0.75, 0.65, 120",
    "CRUISE_AND_FUEL, 0.35, 0.5, 300"
  })
  void deepOnesAreFoundWithTheirCauseAndNoneIsInvented(
      DerateHunt.Telling telling, double leastFound, double leastRight, int latestSeconds) {
    List<DerateHunt> hunts =
        IntStream.rangeClosed(81, 95)
            .mapToObj(TowingWorld::of)
            .map(
                world ->
                    DerateHunt.over(world.scenario(), world.number(), world.vehicle(), telling))
            .toList();
    List<DerateHunt.Match> deep =
        hunts.stream()
            .flatMap(hunt -> hunt.matches().stream())
            .filter(match -> match.truth().isDeep(DEEP_PERCENT, LONG_SECONDS))
            .toList();
    List<DerateHunt.Match> found = deep.stream().filter(DerateHunt.Match::isFound).toList();
    assertThat(deep).as("the worlds have derates").hasSizeGreaterThan(5);
    assertThat(found).hasSizeGreaterThanOrEqualTo((int) Math.ceil(leastFound * deep.size()));
    assertThat(found.stream().filter(DerateHunt.Match::isCauseRight))
        .hasSizeGreaterThanOrEqualTo((int) Math.ceil(leastRight * found.size()));
    assertThat(found).allMatch(match -> match.delaySeconds() <= latestSeconds);
    assertThat(hunts.stream().flatMap(hunt -> hunt.invented().stream())).isEmpty();
  }

  /** The hot grade derates by charge air and the pull on rollers too; the cool day never. */
  @ParameterizedTest
  @EnumSource(DerateHunt.Telling.class)
  void theCoolDayHasNone(DerateHunt.Telling telling) {
    assertThat(hunt("cool-day", 1, telling).found()).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({
    "long-hot-grade, BOTH_TORQUES, 20",
    "dyno-pull, BOTH_TORQUES, 10",
    "dyno-pull, PEDAL_AND_FUEL, 20",
  })
  void theDemoDrivesDeratesAreFound(String name, DerateHunt.Telling telling, int latestSeconds) {
    for (int seed = 1; seed <= 3; seed++) {
      DerateHunt hunt = hunt(name, seed, telling);
      List<DerateHunt.Match> deep =
          hunt.matches().stream()
              .filter(match -> match.truth().isDeep(DEEP_PERCENT, LONG_SECONDS))
              .toList();
      assertThat(deep).isNotEmpty().allMatch(DerateHunt.Match::isFound);
      assertThat(deep).allMatch(match -> match.delaySeconds() <= latestSeconds);
      assertThat(deep).allMatch(match -> CAUSES.contains(match.found().orElseThrow().cause()));
      assertThat(hunt.invented()).isEmpty();
    }
  }

  /** The depth that is told is the plant's own, but for the steps of 1 % of both torques. */
  @Test
  void theDepthIsThePlants() {
    List<Double> misses = new ArrayList<>();
    for (int seed = 1; seed <= 3; seed++) {
      for (DerateHunt.Match match :
          hunt("long-hot-grade", seed, DerateHunt.Telling.BOTH_TORQUES).matches()) {
        match
            .found()
            .ifPresent(
                found -> misses.add(found.deepestPercent() - match.truth().deepestPercent()));
      }
    }
    assertThat(misses).isNotEmpty().allMatch(miss -> Math.abs(miss) <= 2);
  }

  private static DerateHunt hunt(String name, long seed, DerateHunt.Telling telling) {
    Scenario scenario = DemoWorld.scenario(name).orElseThrow();
    return DerateHunt.over(scenario, seed, vehicle(scenario), telling);
  }

  private static Vehicle vehicle(Scenario scenario) {
    try {
      return VehicleJson.read(DemoWorld.vehicleFile(scenario), "the scenario's vehicle");
    } catch (steadypull.vehicle.VehicleFileException broken) {
      throw new AssertionError(broken);
    }
  }
}
