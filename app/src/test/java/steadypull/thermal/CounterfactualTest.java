package steadypull.thermal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.road.GradeProfile;
import steadypull.road.RoadAhead;
import steadypull.thermal.Forecast.Assumption;
import steadypull.thermal.Forecast.Assumption.AirConditioningOff;
import steadypull.thermal.Forecast.Assumption.LoadHeld;
import steadypull.thermal.Forecast.Assumption.OneGearLower;
import steadypull.thermal.Forecast.Assumption.SpeedEased;
import steadypull.thermal.Forecast.Assumption.StoppedAtIdle;

/** What settles where under another gear, without air conditioning, and at idle, on a hot climb. */
class CounterfactualTest {
  private static final Channel COOLANT = Channels.ENGINE_COOLANT_TEMP;
  private static final Channel AIR = Channels.CHARGE_AIR_TEMP_OUT;
  private static final double HIGHER_GEAR = 1900;
  private static final double LOWER_GEAR = 2450;

  /** A heavy pull at 85 km/h in hot air, its coolant so hot that the fan is in. */
  private static final Map<Channel, Double> CLIMB =
      Map.ofEntries(
          Map.entry(Channels.REFERENCE_TORQUE, 1000.0),
          Map.entry(Channels.DELIVERED_TORQUE, 85.0),
          Map.entry(Channels.VEHICLE_SPEED, 85.0),
          Map.entry(Channels.AIR_MASS_FLOW, 215.0),
          Map.entry(Channels.FUEL_RATE, 43.0),
          Map.entry(Channels.AMBIENT_AIR_TEMP, 42.0),
          Map.entry(Channels.CHARGE_AIR_TEMP_IN, 165.0),
          Map.entry(AIR, 75.0),
          Map.entry(Channels.CHARGE_COOLANT_TEMP, 60.0),
          Map.entry(Channels.ENGINE_OIL_TEMP, 118.0),
          Map.entry(Channels.TRANSMISSION_FLUID_TEMP, 100.0),
          Map.entry(COOLANT, 111.0));

  private final ThermalForecaster forecaster = new ThermalForecaster(TestVehicles.heavy());
  private RoadAhead road = new RoadAhead.Unknown();
  private int second;

  private Forecast drive(int seconds, double rpm, double torquePercent) {
    Map<Channel, Double> told = new TreeMap<>((one, other) -> one.id().compareTo(other.id()));
    told.putAll(CLIMB);
    told.put(Channels.ENGINE_SPEED, rpm);
    told.put(Channels.DELIVERED_TORQUE, torquePercent);
    Forecast forecast = new Forecast(0, new LoadHeld(), List.of());
    for (int i = 0; i < seconds; i++) {
      second++;
      told.forEach(
          (channel, value) -> forecaster.accept(new Sample(channel, second * 1_000_000L, value)));
      forecaster.accept(road);
      forecast = forecaster.tick(second * 1_000_000L);
    }
    return forecast;
  }

  /** The same power in the lower gear first, then in the higher. */
  private Forecast climbInTwoGears() {
    drive(60, LOWER_GEAR, 10 + 75 * HIGHER_GEAR / LOWER_GEAR);
    return drive(180, HIGHER_GEAR, 85);
  }

  private double settles(Assumption assumption, Channel channel) {
    return ready(forecaster.under(assumption), channel).settlesAtCelsius();
  }

  private static ChannelForecast.Ready ready(Forecast forecast, Channel channel) {
    assertThat(forecast.of(channel)).containsInstanceOf(ChannelForecast.Ready.class);
    return (ChannelForecast.Ready) forecast.of(channel).orElseThrow();
  }

  private static void assertSame(Forecast found, Forecast expected) {
    for (ChannelForecast each : expected.channels()) {
      ChannelForecast.Ready there = ready(expected, each.channel());
      ChannelForecast.Ready here = ready(found, each.channel());
      assertThat(here.settlesAtCelsius()).isCloseTo(there.settlesAtCelsius(), within(0.01));
      for (double ahead : new double[] {30, 120, 300, 600}) {
        assertThat(here.fan().at(Fan.MEDIAN, ahead))
            .as(each.channel().id())
            .isCloseTo(there.fan().at(Fan.MEDIAN, ahead), within(0.3));
      }
    }
  }

  @Test
  void whatIsAsItIsNowSettlesAsItIsForecastNow() {
    Forecast now = climbInTwoGears();
    assertSame(forecaster.under(new LoadHeld()), now);
    assertSame(forecaster.under(new SpeedEased(85)), now);
  }

  @Test
  void oneGearLowerCoolsTheEngineWhereItsFanIsIn() {
    Forecast held = climbInTwoGears();
    double now = ready(held, COOLANT).settlesAtCelsius();
    double lower = settles(new OneGearLower(), COOLANT);
    // With its fan fully in it is 2.3 K (AlteredLoadTest); as it cools the fan begins to let go.
    assertThat(now - lower).isBetween(0.3, 2.5);
  }

  @Test
  void oneGearLowerPromisesNoCoolerChargeAir() {
    Forecast held = climbInTwoGears();
    double now = ready(held, AIR).settlesAtCelsius();
    assertThat(settles(new OneGearLower(), AIR)).isBetween(now - 0.01, now + 6);
  }

  @Test
  void nobodyCanSayWhatAGearDoesThatThisDriveHasNotShown() {
    drive(180, HIGHER_GEAR, 85);
    assertThat(forecaster.under(new OneGearLower()).of(COOLANT))
        .containsInstanceOf(ChannelForecast.Learning.class);
  }

  /** The heavy vehicle's engine is rated at 3300 r/min. */
  @Test
  void noGearIsAssumedInWhichTheEngineWouldTurnFasterThanRated() {
    drive(60, 3350, 50);
    drive(180, HIGHER_GEAR, 85);
    assertThat(forecaster.under(new OneGearLower()).of(COOLANT))
        .containsInstanceOf(ChannelForecast.Learning.class);
  }

  // With its fan fully in it is 2.1 to 5.3 K (AlteredLoadTest, by hand); as it cools the fan, which
  // takes 6 K to come in, lets go of up to two thirds of that.
  @Test
  void withoutAirConditioningTheEngineSettlesCoolerByItsHeat() {
    Forecast held = climbInTwoGears();
    double cooler =
        ready(held, COOLANT).settlesAtCelsius() - settles(new AirConditioningOff(), COOLANT);
    assertThat(cooler).isBetween(2.1 / 3, 5.3);
  }

  @Test
  void stoppedAtIdleEverythingUnderTheBonnetCools() {
    Forecast held = climbInTwoGears();
    for (Channel channel : List.of(COOLANT, AIR, Channels.CHARGE_COOLANT_TEMP)) {
      ChannelForecast.Ready idle = ready(forecaster.under(new StoppedAtIdle()), channel);
      assertThat(idle.fan().at(Fan.MEDIAN, 600))
          .isLessThan(ready(held, channel).fan().at(Fan.MEDIAN, 600) - 5);
      assertThat(idle.fan().at(Fan.MEDIAN, 600)).isLessThan(idle.nowCelsius() - 5);
    }
  }

  /** A climb of 5 % that goes on, as the load does. */
  @Test
  void onAKnownRoadTheyFollowTheRoad() {
    double[] grades = new double[400];
    double[] errors = new double[grades.length];
    Arrays.fill(grades, 0, 200, 0.05);
    Arrays.fill(errors, 0.002);
    road = new RoadAhead.Known(new GradeProfile(50, grades, errors), List.of());
    Forecast along = climbInTwoGears();
    assertThat(along.assumption()).isEqualTo(new Assumption.RoadKnown());
    double now = median(along, 600);
    double held = median(forecaster.under(new LoadHeld()), 600);
    double off = median(forecaster.under(new AirConditioningOff()), 600);
    double lower = median(forecaster.under(new OneGearLower()), 600);
    // The climb ends after 10 km: what holds the load does not know it.
    assertThat(now).isLessThan(held - 5);
    assertThat(off).isLessThan(held - 5);
    assertThat(lower).isLessThan(held - 5);
    assertThat(median(forecaster.under(new AirConditioningOff()), 300))
        .isBetween(median(along, 300) - 5, median(along, 300) - 1);
    assertThat(median(forecaster.under(new OneGearLower()), 300))
        .isBetween(median(along, 300) - 3, median(along, 300) - 0.1);
  }

  private static double median(Forecast forecast, double seconds) {
    return ready(forecast, COOLANT).fan().at(Fan.MEDIAN, seconds);
  }

  // Advice and screen ask for the same in the same second.
  @Test
  void whatIsAskedAgainIsComputedAnewOnlyWhenTimeHasMovedOn() {
    climbInTwoGears();
    Forecast eased = forecaster.under(new SpeedEased(60));
    assertThat(forecaster.under(new SpeedEased(60))).isSameAs(eased);
    assertThat(forecaster.under(new SpeedEased(70)).assumption()).isEqualTo(new SpeedEased(70));
    drive(1, HIGHER_GEAR, 85);
    assertThat(forecaster.under(new SpeedEased(60)).timeMicros())
        .isEqualTo(eased.timeMicros() + 1_000_000L);
  }

  /**
   * At 54 km/h the gear still turns the engine at 1207 r/min, at 53.5 the driver has shifted down
   * and it turns at 1900 as before: the fan gives more though the air of the road gives less.
   */
  @Test
  void anEasedSpeedIsPromisedNoMoreThanASlowerFanGives() {
    climbInTwoGears();
    assertThat(settles(new SpeedEased(54), COOLANT) - settles(new SpeedEased(53.5), COOLANT))
        .isGreaterThan(0.3);
  }
}
