package steadypull.thermal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;
import static org.assertj.core.api.Assertions.within;

import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.thermal.Forecast.Assumption.SpeedEased;
import steadypull.thermal.Forecast.Assumption.StoppedAtIdle;

class ThermalForecasterTest {
  private static final Channel AIR = Channels.CHARGE_AIR_TEMP_OUT;

  private final ThermalForecaster forecaster = new ThermalForecaster(TestVehicles.heavy());
  private final Map<Channel, Double> said = new HashMap<>();
  private final Set<Channel> silent = new HashSet<>();
  private int second;

  @Test
  void aForecastStartsAfterAMinuteOfDriving() {
    cruise();
    assertThat(drive(30).of(AIR)).containsInstanceOf(ChannelForecast.Learning.class);
    assertThat(drive(60).of(AIR)).containsInstanceOf(ChannelForecast.Ready.class);
  }

  @Test
  void anIdlingEngineTeachesTooLittle() {
    cruise();
    said.put(Channels.DELIVERED_TORQUE, 9.0);
    said.put(Channels.ENGINE_SPEED, 720.0);
    assertThat(drive(300).of(AIR)).containsInstanceOf(ChannelForecast.Learning.class);
  }

  // Mistake to avoid: forecasting from the trend alone when the load has just changed.
  @Test
  void aNewLoadMovesTheForecastBeforeTheTemperatureMoves() {
    cruise();
    ChannelForecast.Ready before = ready(drive(180), AIR);
    climb();
    for (int each = 1; each <= 8; each++) {
      said.put(Channels.CHARGE_AIR_TEMP_IN, 160 - 74 * Math.exp(-each / 12.0));
      drive(1);
    }
    ChannelForecast.Ready after = ready(drive(1), AIR);
    assertThat(after.nowCelsius()).isCloseTo(before.nowCelsius(), within(6.0));
    assertThat(after.settlesAtCelsius()).isGreaterThan(before.settlesAtCelsius() + 20);
    assertThat(after.fan().at(Fan.MEDIAN, 180))
        .isGreaterThan(before.fan().at(Fan.MEDIAN, 180) + 15);
  }

  // Mistake to avoid: treating a stale channel as a steady one.
  @Test
  void aStaleChannelHasNoForecast() {
    cruise();
    drive(180);
    silent.add(AIR);
    assertThat(drive(5).of(AIR)).containsInstanceOf(ChannelForecast.Ready.class);
    Forecast stale = drive(33);
    assertThat(stale.of(AIR).orElseThrow())
        .isInstanceOfSatisfying(
            ChannelForecast.NoData.class,
            none -> assertThat(none.lastHeardSecondsAgo()).isCloseTo(38, within(0.1)));
    assertThat(stale.of(Channels.ENGINE_COOLANT_TEMP))
        .containsInstanceOf(ChannelForecast.Ready.class);
  }

  @Test
  void aForecastIsBackWithItsChannel() {
    cruise();
    drive(180);
    silent.add(AIR);
    drive(90);
    silent.clear();
    said.put(AIR, 71.0);
    ChannelForecast.Ready ready = ready(drive(2), AIR);
    assertThat(ready.nowCelsius()).isCloseTo(71, within(1.5));
  }

  @Test
  void withoutAnyWordOfTheEnginesPowerThereIsNoForecast() {
    cruise();
    drive(180);
    silent.add(Channels.DELIVERED_TORQUE);
    silent.add(Channels.FUEL_RATE);
    silent.add(Channels.AIR_MASS_FLOW);
    silent.add(Channels.ENGINE_LOAD);
    assertThat(drive(20).of(AIR)).containsInstanceOf(ChannelForecast.NoData.class);
  }

  @Test
  void aChannelHeardAloneHasAForecastAfterAMinute() {
    said.put(AIR, 60.0);
    assertThat(drive(55).of(AIR)).containsInstanceOf(ChannelForecast.Learning.class);
    assertThat(drive(30).of(AIR)).containsInstanceOf(ChannelForecast.Ready.class);
  }

  // Nobody can say what easing does to a channel of which no load is known.
  @Test
  void aChannelHeardAloneIsNotForecastUnderAnotherLoad() {
    said.put(AIR, 60.0);
    drive(120);
    assertThat(forecaster.under(new SpeedEased(60)).of(AIR))
        .containsInstanceOf(ChannelForecast.Learning.class);
  }

  @Test
  void aChannelGoesOnByItselfWhenItsLoadIsLongSilent() {
    cruise();
    drive(180);
    silent.add(Channels.DELIVERED_TORQUE);
    silent.add(Channels.FUEL_RATE);
    silent.add(Channels.AIR_MASS_FLOW);
    assertThat(drive(40).of(AIR)).containsInstanceOf(ChannelForecast.NoData.class);
    assertThat(drive(60).of(AIR)).containsInstanceOf(ChannelForecast.Ready.class);
  }

  @Test
  void aChannelAskedForSeldomIsNotStaleBetweenTwoTurns() {
    cruise();
    drive(60);
    silent.add(Channels.ENGINE_OIL_TEMP);
    for (int turn = 0; turn < 30; turn++) {
      drive(7);
      say(Channels.ENGINE_OIL_TEMP, 95);
    }
    assertThat(drive(9).of(Channels.ENGINE_OIL_TEMP))
        .containsInstanceOf(ChannelForecast.Ready.class);
  }

  @Test
  void aVehicleWithoutAirFlowAndInletTemperatureHasAWiderBand() {
    cruise();
    double full = width(ready(drive(180), AIR));
    ThermalForecasterTest poor = new ThermalForecasterTest();
    poor.cruise();
    poor.silent.add(Channels.AIR_MASS_FLOW);
    poor.silent.add(Channels.CHARGE_AIR_TEMP_IN);
    poor.silent.add(Channels.CHARGE_COOLANT_TEMP);
    assertThat(width(ready(poor.drive(180), AIR))).isGreaterThan(full);
  }

  @Test
  void easingOffSettlesLowerAndSlowerIsCoolerStill() {
    cruise();
    drive(120);
    climb();
    ChannelForecast.Ready held = ready(drive(60), AIR);
    double at75 = ready(forecaster.under(new SpeedEased(75)), AIR).settlesAtCelsius();
    double at60 = ready(forecaster.under(new SpeedEased(60)), AIR).settlesAtCelsius();
    assertThat(held.settlesAtCelsius()).isGreaterThan(at75 + 3);
    assertThat(at75).isGreaterThan(at60 + 3);
  }

  @Test
  void easingToThePresentSpeedChangesNothing() {
    cruise();
    drive(120);
    climb();
    Forecast held = drive(60);
    Forecast same = forecaster.under(new SpeedEased(85));
    assertThat(ready(same, AIR).settlesAtCelsius())
        .isCloseTo(ready(held, AIR).settlesAtCelsius(), within(0.01));
  }

  @Test
  void stoppedAtIdleTheChargeCoolantCools() {
    cruise();
    drive(120);
    climb();
    said.put(Channels.CHARGE_COOLANT_TEMP, 90.0);
    drive(60);
    ChannelForecast.Ready idle =
        ready(forecaster.under(new StoppedAtIdle()), Channels.CHARGE_COOLANT_TEMP);
    assertThat(idle.fan().at(Fan.MEDIAN, 300)).isLessThan(idle.nowCelsius() - 10);
  }

  @Test
  void askingUnderAnAssumptionLeavesTheNextForecastAlone() {
    ThermalForecasterTest asked = new ThermalForecasterTest();
    cruise();
    asked.cruise();
    drive(120);
    asked.drive(120);
    asked.forecaster.under(new SpeedEased(60));
    assertThat(ready(asked.drive(1), AIR).settlesAtCelsius())
        .isEqualTo(ready(drive(1), AIR).settlesAtCelsius());
  }

  @Test
  void aTickAfterALongGapStartsFromTheNewReadings() {
    cruise();
    drive(180);
    second += 1200;
    said.put(AIR, 35.0);
    ChannelForecast.Ready ready = ready(drive(1), AIR);
    assertThat(ready.nowCelsius()).isEqualTo(35);
    assertThat(ready.settlesAtCelsius()).isBetween(20.0, 120.0);
  }

  @Test
  void derivedChannelsOfATableAreIgnored() {
    cruise();
    drive(120);
    ThermalForecasterTest fed = new ThermalForecasterTest();
    fed.cruise();
    fed.said.put(Channels.ROAD_GRADE, 12.0);
    fed.drive(120);
    assertThat(ready(fed.forecaster.under(new SpeedEased(60)), AIR).settlesAtCelsius())
        .isEqualTo(ready(forecaster.under(new SpeedEased(60)), AIR).settlesAtCelsius());
  }

  @Test
  void anAssumptionBeforeTheFirstTickIsRefused() {
    assertThatIllegalStateException()
        .isThrownBy(() -> forecaster.under(new StoppedAtIdle()))
        .withMessageContaining("tick first");
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
    said.put(Channels.CHARGE_AIR_TEMP_OUT, 55.0);
    said.put(Channels.CHARGE_COOLANT_TEMP, 48.0);
    said.put(Channels.ENGINE_COOLANT_TEMP, 88.0);
    said.put(Channels.ENGINE_OIL_TEMP, 95.0);
    said.put(Channels.TRANSMISSION_FLUID_TEMP, 80.0);
  }

  /** The load of a steep grade; temperatures follow only if the test lets them. */
  private void climb() {
    said.put(Channels.DELIVERED_TORQUE, 88.0);
    said.put(Channels.AIR_MASS_FLOW, 215.0);
    said.put(Channels.FUEL_RATE, 43.0);
  }

  private Forecast drive(int seconds) {
    Forecast forecast = new Forecast(0, new Forecast.Assumption.LoadHeld(), java.util.List.of());
    for (int i = 0; i < seconds; i++) {
      second++;
      for (Map.Entry<Channel, Double> each : said.entrySet()) {
        if (!silent.contains(each.getKey())) {
          say(each.getKey(), each.getValue());
        }
      }
      forecast = forecaster.tick(second * 1_000_000L);
    }
    return forecast;
  }

  private void say(Channel channel, double value) {
    forecaster.accept(new Sample(channel, second * 1_000_000L, value));
  }

  private static ChannelForecast.Ready ready(Forecast forecast, Channel channel) {
    assertThat(forecast.of(channel)).containsInstanceOf(ChannelForecast.Ready.class);
    return (ChannelForecast.Ready) forecast.of(channel).orElseThrow();
  }

  private static double width(ChannelForecast.Ready ready) {
    return ready.fan().at(5, 120) - ready.fan().at(1, 120);
  }
}
