package steadypull.thermal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.demo.DemoWorld;
import steadypull.road.LatestSamples;
import steadypull.vehicle.PressureCap;
import steadypull.vehicle.Provenance;
import steadypull.vehicle.Vehicle;

class BoilingDuringADriveTest {
  /** A cap that holds nothing any more: boils at 107 at the sea and at 97 at 3000 m. */
  private static final Vehicle LEAKING =
      TestVehicles.heavy().withCap(new PressureCap(0, new Provenance(Provenance.Kind.OWNER, "")));

  /** ISO 2533: 70.1 kPa at 3000 m. */
  @Test
  void theForecastsLimitFollowsTheAirPressure() {
    ThermalForecaster forecaster = new ThermalForecaster(LEAKING);
    DemoSamples drive =
        new DemoSamples(
            DemoWorld.drive(DemoWorld.scenario("long-hot-grade").orElseThrow(), 1),
            Set.of(Channels.BAROMETRIC_PRESSURE));
    for (int second = 1; second <= 160; second++) {
      drive.until(second).forEach(forecaster::accept);
      say(forecaster, Channels.BAROMETRIC_PRESSURE, second, second <= 150 ? 101.3 : 70.1);
      Forecast forecast = forecaster.tick(second * 1_000_000L);
      if (second == 150) {
        assertThat(limit(forecast)).isCloseTo(99.2, within(0.3));
      }
      if (second == 160) {
        assertThat(limit(forecast)).isCloseTo(88.8, within(0.3));
      }
    }
  }

  private static double limit(Forecast forecast) {
    return ((ChannelForecast.Ready) forecast.of(Channels.ENGINE_COOLANT_TEMP).orElseThrow())
        .toLimit()
        .orElseThrow()
        .limitCelsius();
  }

  private static void say(ThermalForecaster forecaster, Channel channel, int second, double value) {
    forecaster.accept(new Sample(channel, second * 1_000_000L - 400_000, value));
  }

  /** 92 degC are 20 under the limit that was entered, and 3 over the one that counts up there. */
  @ParameterizedTest
  @CsvSource({"101.3, false", "70.1, true"})
  void coolantNearBoilingIsAHotChannel(double kilopascals, boolean isHot) {
    DerateDetector detector = new DerateDetector(LEAKING);
    Derate latest = new Derate.None();
    for (int second = 1; second <= 30; second++) {
      long micros = second * 1_000_000L;
      detector.accept(new Sample(Channels.BAROMETRIC_PRESSURE, micros, kilopascals));
      detector.accept(new Sample(Channels.ENGINE_COOLANT_TEMP, micros, 92));
      detector.accept(new Sample(Channels.DEMANDED_TORQUE, micros, 90));
      detector.accept(new Sample(Channels.DELIVERED_TORQUE, micros, second < 20 ? 90 : 80));
      latest = detector.tick(micros);
    }
    assertThat(latest instanceof Derate.Active).isEqualTo(isHot);
  }

  /** An engine so near to boiling may hold back: what it gives then says nothing of its most. */
  @ParameterizedTest
  @CsvSource({"101.3, false", "70.1, true"})
  void theEnginesMostIsNotLearntFromCoolantNearBoiling(double kilopascals, boolean isHot) {
    LatestSamples samples = new LatestSamples();
    samples.accept(new Sample(Channels.BAROMETRIC_PRESSURE, 0, kilopascals));
    samples.accept(new Sample(Channels.ENGINE_COOLANT_TEMP, 0, 88));
    assertThat(new WatchedChannels(LEAKING).isHot(samples, 1_000_000)).isEqualTo(isHot);
  }

  @Test
  void withoutAPressureTheReceiversHeightTells() {
    LatestSamples samples = new LatestSamples();
    assertThat(OutsidePressure.kilopascals(samples, 0)).isEqualTo(101.325);
    samples.accept(new Sample(Channels.ALTITUDE, 0, 2000));
    assertThat(OutsidePressure.kilopascals(samples, 0)).isCloseTo(79.5, within(0.05));
    samples.accept(new Sample(Channels.BAROMETRIC_PRESSURE, 0, 81));
    assertThat(OutsidePressure.kilopascals(samples, 0)).isEqualTo(81);
  }
}
