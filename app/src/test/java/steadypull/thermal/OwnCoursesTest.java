package steadypull.thermal;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.LinkedHashMap;
import java.util.Map;
import org.junit.jupiter.api.Test;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;

class OwnCoursesTest {
  private final ThermalForecaster forecaster = new ThermalForecaster(TestVehicles.heavy());
  private double exhaust = 400;
  private double greatest;
  private int second;

  /** Some seconds at a torque, in a vehicle that tells no air flow. */
  private void drive(int seconds, double percent, double litresPerHour, double settles) {
    for (int until = second + seconds; second < until; ) {
      second++;
      exhaust += (settles - exhaust) / 7;
      Map<Channel, Double> told = new LinkedHashMap<>();
      told.put(Channels.ENGINE_SPEED, 1550.0);
      told.put(Channels.VEHICLE_SPEED, 76.0);
      told.put(Channels.REFERENCE_TORQUE, 740.0);
      told.put(Channels.DELIVERED_TORQUE, percent);
      told.put(Channels.FUEL_RATE, litresPerHour);
      told.put(Channels.AMBIENT_AIR_TEMP, 25.0);
      told.put(Channels.CHARGE_AIR_TEMP_OUT, 40.0);
      told.put(Channels.EXHAUST_TEMP_BEFORE_TURBINE, Math.rint(exhaust));
      told.forEach(
          (channel, value) -> forecaster.accept(new Sample(channel, second * 1_000_000L, value)));
      Forecast forecast = forecaster.tick(second * 1_000_000L);
      if (forecast.of(Channels.EXHAUST_TEMP_BEFORE_TURBINE).orElse(null)
          instanceof ChannelForecast.Ready ready) {
        greatest = Math.max(greatest, ready.fan().at(Fan.MEDIAN, 120));
      }
    }
  }

  // 124 to 560 degC in twenty seconds seemed to lead to a thousand.
  @Test
  void theRiseOfExhaustAfterAnOverrunLeadsNoFartherThanItsLoad() {
    for (int hill = 0; hill < 3; hill++) {
      drive(150, 58, 16, 570);
      drive(60, 0, 0, 125);
    }
    greatest = 0;
    drive(60, 58, 16, 570);
    assertThat(greatest).isBetween(540.0, 640.0);
  }
}
