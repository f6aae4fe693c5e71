package steadypull.thermal;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.demo.DemoWorld;
import steadypull.demo.plant.WarmStart;
import steadypull.demo.road.Course;
import steadypull.demo.road.Scenario;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.Vehicle;

/**
 * Vehicles that tell little, and whose cooling layout is not known either: a table with a handful
 * of channels, read as air-to-air although water cools the charge air.
 */
class SparseVehicleTest {
  private static final Channel AIR = Channels.CHARGE_AIR_TEMP_OUT;
  private static final double LIMIT = 105;

  private static final Set<Channel> SIX =
      Set.of(
          Channels.ENGINE_COOLANT_TEMP,
          AIR,
          Channels.VEHICLE_SPEED,
          Channels.ENGINE_SPEED,
          Channels.ENGINE_LOAD,
          Channels.AMBIENT_AIR_TEMP);

  private static final Set<Channel> COOLANT_ONLY =
      Set.of(Channels.ENGINE_COOLANT_TEMP, Channels.VEHICLE_SPEED, Channels.ENGINE_SPEED);

  static List<Set<Channel>> chargeAirAlone() {
    return List.of(Set.of(AIR), Set.of(AIR, Channels.VEHICLE_SPEED));
  }

  static List<Set<Channel>> allThatHearChargeAir() {
    return List.of(Set.of(AIR), Set.of(AIR, Channels.VEHICLE_SPEED), SIX);
  }

  // The model alone insisted that charge air settles at 74 to 88 degC while it climbed to 106.
  @Test
  void aClimbThatTheModelCannotExplainIsWarnedOf() {
    assertThat(lead(run("long-hot-grade", SIX))).isBetween(40.0, 300.0);
  }

  @ParameterizedTest
  @MethodSource("chargeAirAlone")
  void aChannelThatIsAllThatIsHeardIsWarnedOf(Set<Channel> heard) {
    assertThat(lead(run("long-hot-grade", heard))).isBetween(30.0, 300.0);
  }

  @ParameterizedTest
  @MethodSource("allThatHearChargeAir")
  void theCoolDayIsNotCautionedAbout(Set<Channel> heard) {
    Backtest coolDay = run("cool-day", heard);
    assertThat(coolDay.firstAdvisory(Channels.thermal())).isEmpty();
  }

  @Test
  void aWarmUpFromColdIsNoApproachToALimit() {
    Scenario coolDay = DemoWorld.scenario("cool-day").orElseThrow();
    Course.OnRoad course = (Course.OnRoad) coolDay.course();
    Scenario cold =
        coolDay.with(
            (Course)
                new Course.OnRoad(
                    course.road(),
                    course.weather(),
                    course.wishes(),
                    new WarmStart(20, 20, 20, 20, 0)));
    Backtest drive = run(cold, COOLANT_ONLY);
    assertThat(drive.heard(Channels.ENGINE_COOLANT_TEMP, drive.ticks() / 2)).isGreaterThan(80);
    for (int second = 1; second <= drive.ticks(); second++) {
      assertThat(probabilityInTenMinutes(drive, second)).as("at %d s", second).isLessThan(0.05);
    }
  }

  private static double probabilityInTenMinutes(Backtest drive, int second) {
    return drive.said(Channels.ENGINE_COOLANT_TEMP, second) instanceof ChannelForecast.Ready ready
        ? ready.toLimit().map(LimitForecast::probability600).orElse(0.0)
        : 0;
  }

  /** Seconds from the first advisory until the limit is passed. */
  private static double lead(Backtest drive) {
    int passed =
        IntStream.rangeClosed(1, drive.ticks())
            .filter(second -> drive.heard(AIR, second) >= LIMIT)
            .findFirst()
            .orElseThrow();
    return passed - drive.firstAdvisory(List.of(AIR)).orElseThrow();
  }

  private static Backtest run(String scenario, Set<Channel> heard) {
    return run(DemoWorld.scenario(scenario).orElseThrow(), heard);
  }

  private static Backtest run(Scenario scenario, Set<Channel> heard) {
    Set<Channel> missing = new HashSet<>(Channels.all());
    missing.removeAll(heard);
    Vehicle vehicle = TestVehicles.heavy(CoolingLayout.AIR_TO_AIR, LIMIT);
    return Backtest.of(scenario, 1, vehicle, missing);
  }
}
