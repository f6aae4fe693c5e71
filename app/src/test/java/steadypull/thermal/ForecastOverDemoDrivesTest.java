package steadypull.thermal;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.demo.DemoWorld;
import steadypull.demo.plant.RigTrait;
import steadypull.demo.road.Scenario;

/**
 * The forecaster against an invented world that shares no equation with it. Bounds are loose enough
 * for a world that changes a little, and tight enough that a wrong forecaster breaks them.
 */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@Execution(ExecutionMode.CONCURRENT)
class ForecastOverDemoDrivesTest {
  private final Backtest hotGrade =
      Backtest.of(scenario("long-hot-grade"), 1, TestVehicles.heavy(), Set.of());
  private final Backtest coolDay =
      Backtest.of(scenario("cool-day"), 1, TestVehicles.heavy(), Set.of());

  @Test
  void theHotGradeIsWarnedOfWellBeforePowerGoes() {
    double derate = hotGrade.derateBegins().orElseThrow();
    double advised = hotGrade.firstAdvisory(Backtest.DERATING).orElseThrow();
    assertThat(derate - advised).isBetween(40.0, 300.0);
  }

  // Not even a notice: the rules raise one at 0.05 within 180 s, within 600 s for the slow ones.
  @Test
  void theCoolDayIsNeverAdvisedAbout() {
    for (Channel channel : Channels.thermal()) {
      assertThat(coolDay.greatestProbability(channel)).as(channel.id()).isLessThanOrEqualTo(0.05);
    }
    for (Channel channel : ForecastScore.SLOW) {
      assertThat(coolDay.greatestWithin600(channel)).as(channel.id()).isLessThanOrEqualTo(0.05);
    }
    assertThat(coolDay.derates()).containsOnly(new Derate.None());
  }

  // A driver on a steady climb reads the fan's edge as "at the latest" and "at the earliest".
  @Test
  void onASteadyClimbTheFanIsNarrowUpwards() {
    ChannelForecast.Ready ready =
        (ChannelForecast.Ready) hotGrade.said(Channels.CHARGE_AIR_TEMP_OUT, 435);
    Fan fan = ready.fan();
    assertThat(fan.at(6, 60) - fan.at(Fan.MEDIAN, 60)).isLessThan(10);
    assertThat(fan.at(6, 180) - fan.at(Fan.MEDIAN, 180)).isLessThan(24);
    assertThat(fan.at(0, 180)).as("charge air is never colder than outside").isGreaterThan(38);
  }

  @Test
  void aPullOnADynamometerIsWarnedOfToo() {
    Backtest pull = Backtest.of(scenario("dyno-pull"), 1, TestVehicles.light(), Set.of());
    double derate = pull.derateBegins().orElseThrow();
    assertThat(derate - pull.firstAdvisory(Backtest.DERATING).orElseThrow()).isBetween(25.0, 120.0);
  }

  @ParameterizedTest
  @CsvSource({"5600, 250, 0", "8500, 220, 0.1"})
  void otherRigsOnTheSameGradeAreWarnedOrCalm(double mass, double radiator, double clogged) {
    Scenario scenario = scenario("long-hot-grade");
    Scenario other =
        scenario.with(
            scenario
                .rig()
                .with(RigTrait.MASS_KG, mass)
                .with(RigTrait.CHARGE_RADIATOR_W_PER_K, radiator)
                .with(RigTrait.CLOGGED_SHARE, clogged));
    Backtest drive = Backtest.of(other, 5, TestVehicles.heavy(), Set.of());
    if (drive.derateBegins().isPresent()) {
      double advised = drive.firstAdvisory(Channels.thermal()).orElseThrow();
      assertThat(drive.derateBegins().getAsDouble() - advised).isGreaterThan(20);
    } else {
      assertThat(drive.greatestProbability(Channels.CHARGE_AIR_TEMP_OUT)).isLessThan(0.9);
    }
  }

  @Test
  void aVehicleThatTellsLessIsStillWarned() {
    Backtest poor =
        Backtest.of(
            scenario("long-hot-grade"),
            1,
            TestVehicles.heavy(),
            Set.of(
                Channels.AIR_MASS_FLOW,
                Channels.CHARGE_AIR_TEMP_IN,
                Channels.FUEL_RATE,
                Channels.AMBIENT_AIR_TEMP));
    assertThat(
            poor.derateBegins().orElseThrow() - poor.firstAdvisory(Backtest.DERATING).orElseThrow())
        .isGreaterThan(20);
  }

  @Test
  void theSameSamplesGiveTheSameForecast() {
    ChannelForecast.Ready first = dynoForecast();
    ChannelForecast.Ready second = dynoForecast();
    assertThat(second.settlesAtCelsius()).isEqualTo(first.settlesAtCelsius());
    assertThat(second.fan().at(0, 300)).isEqualTo(first.fan().at(0, 300));
  }

  private static ChannelForecast.Ready dynoForecast() {
    Backtest pull = Backtest.of(scenario("dyno-pull"), 3, TestVehicles.light(), Set.of());
    return (ChannelForecast.Ready) pull.said(Channels.CHARGE_AIR_TEMP_OUT, 100);
  }

  private static Scenario scenario(String name) {
    return DemoWorld.scenario(name).orElseThrow();
  }
}
