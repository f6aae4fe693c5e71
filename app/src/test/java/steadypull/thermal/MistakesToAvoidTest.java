package steadypull.thermal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.HashMap;
import java.util.Map;
import org.junit.jupiter.api.Test;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.thermal.Forecast.Assumption.LoadHeld;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.DefaultLimits;
import steadypull.vehicle.Limit;
import steadypull.vehicle.Provenance;

/**
 * Mistakes that forecasters of temperatures are known for, each made impossible to make unnoticed.
 * Others have their test where they would be made: a trend alone after a load has changed, and a
 * stale channel, in ThermalForecasterTest; a band that is never checked in ForecastScoreTest;
 * advice that was not driven in EasedSpeedTest; a plant that shares the models' code in FloorsTest.
 */
class MistakesToAvoidTest {
  private static final Channel AIR = Channels.CHARGE_AIR_TEMP_OUT;
  private static final Channel WATER = Channels.CHARGE_COOLANT_TEMP;
  private static final Channel COOLANT = Channels.ENGINE_COOLANT_TEMP;
  private static final Channel OIL = Channels.ENGINE_OIL_TEMP;
  private static final Channel GEARBOX = Channels.TRANSMISSION_FLUID_TEMP;

  private final ThermalForecaster forecaster = new ThermalForecaster(TestVehicles.heavy());
  private final Map<Channel, Double> said = new HashMap<>();
  private int second;

  // A reading in steps of 1 degC stands still for a minute and then moves at once. Its slope over
  // ten seconds is 0.1 K/s, which in three minutes would be 18 K.
  @Test
  void oneStepOfASensorIsNoSlope() {
    cruise();
    drive(240);
    for (Channel channel : new Channel[] {AIR, WATER, COOLANT, OIL, GEARBOX}) {
      double before = ready(channel).fan().at(Fan.MEDIAN, 180);
      said.merge(channel, 1.0, Double::sum);
      drive(3);
      double after = ready(channel).fan().at(Fan.MEDIAN, 180);
      assertThat(after - before).as(channel.id()).isBetween(-0.5, 3.0);
      said.merge(channel, -1.0, Double::sum);
      drive(40);
    }
  }

  // The wind of the road cools: with the same power at half the speed everything that stands in it
  // settles hotter. A square root of the speed, less than any core's, is 1.4 times the 40 K that
  // charge coolant stands above the air.
  @Test
  void noParametersServeAllSpeedsAlike() {
    MistakesToAvoidTest slow = new MistakesToAvoidTest();
    cruise();
    slow.cruise();
    drive(240);
    slow.drive(240);
    climb(85);
    slow.climb(42);
    drive(30);
    slow.drive(30);
    assertThat(slow.ready(WATER).settlesAtCelsius() - ready(WATER).settlesAtCelsius())
        .isGreaterThan(18);
    assertThat(slow.ready(COOLANT).settlesAtCelsius())
        .isGreaterThan(ready(COOLANT).settlesAtCelsius());
  }

  @Test
  void noForecastIsWithoutABandAndNoneNarrows() {
    cruise();
    drive(1200);
    for (Channel channel : new Channel[] {AIR, WATER, COOLANT, OIL, GEARBOX}) {
      Fan fan = ready(channel).fan();
      assertThat(fan.at(5, 60) - fan.at(1, 60)).as(channel.id()).isGreaterThan(0.5);
      for (int point = 2; point < fan.size(); point++) {
        assertThat(width(fan, point))
            .as("%s after %s s", channel.id(), fan.secondsAhead(point))
            .isGreaterThanOrEqualTo(width(fan, point - 1) - 1e-9);
      }
    }
  }

  @Test
  void noLimitIsWithoutItsProvenance() {
    for (CoolingLayout layout : CoolingLayout.values()) {
      assertThat(DefaultLimits.of(layout).values())
          .isNotEmpty()
          .extracting(Limit::provenance)
          .extracting(Provenance::kind)
          .containsOnly(Provenance.Kind.DEFAULT);
    }
    cruise();
    drive(120);
    assertThat(ready(AIR).toLimit().orElseThrow().limitCelsius())
        .isCloseTo(TestVehicles.heavy().limit(AIR).orElseThrow().celsius(), within(1e-9));
  }

  private static double width(Fan fan, int point) {
    return fan.celsius(Fan.LEVELS.indexOf(0.90), point) - fan.celsius(1, point);
  }

  private void cruise() {
    said.put(Channels.REFERENCE_TORQUE, 1000.0);
    said.put(Channels.DELIVERED_TORQUE, 33.0);
    said.put(Channels.ENGINE_SPEED, 1900.0);
    said.put(Channels.VEHICLE_SPEED, 85.0);
    said.put(Channels.AIR_MASS_FLOW, 92.0);
    said.put(Channels.FUEL_RATE, 14.5);
    said.put(Channels.AMBIENT_AIR_TEMP, 30.0);
    said.put(Channels.CHARGE_AIR_TEMP_IN, 86.0);
    said.put(AIR, 55.0);
    said.put(WATER, 48.0);
    said.put(COOLANT, 88.0);
    said.put(OIL, 95.0);
    said.put(GEARBOX, 80.0);
  }

  private void climb(double kilometresPerHour) {
    said.put(Channels.VEHICLE_SPEED, kilometresPerHour);
    said.put(Channels.DELIVERED_TORQUE, 88.0);
    said.put(Channels.AIR_MASS_FLOW, 215.0);
    said.put(Channels.FUEL_RATE, 43.0);
    said.put(Channels.CHARGE_AIR_TEMP_IN, 160.0);
  }

  private void drive(int seconds) {
    for (int i = 0; i < seconds; i++) {
      second++;
      said.forEach(
          (channel, value) -> forecaster.accept(new Sample(channel, second * 1_000_000L, value)));
      forecaster.tick(second * 1_000_000L);
    }
  }

  private ChannelForecast.Ready ready(Channel channel) {
    Forecast forecast = forecaster.under(new LoadHeld());
    assertThat(forecast.of(channel)).containsInstanceOf(ChannelForecast.Ready.class);
    return (ChannelForecast.Ready) forecast.of(channel).orElseThrow();
  }
}
