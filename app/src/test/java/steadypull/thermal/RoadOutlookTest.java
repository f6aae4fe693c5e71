package steadypull.thermal;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.road.GradeProfile;
import steadypull.road.RoadAhead;
import steadypull.vehicle.Vehicle;

/** What a known road does to a forecast, and what it does not. */
class RoadOutlookTest {
  /** A level road at 25 m/s: what the heavy rig takes there by the road-load equation. */
  private static final Map<Channel, Double> LEVEL =
      Map.ofEntries(
          Map.entry(Channels.ENGINE_SPEED, 1700.0),
          Map.entry(Channels.VEHICLE_SPEED, 90.0),
          Map.entry(Channels.REFERENCE_TORQUE, 740.0),
          Map.entry(Channels.DELIVERED_TORQUE, 57.0),
          Map.entry(Channels.DEMANDED_TORQUE, 57.0),
          Map.entry(Channels.FUEL_RATE, 17.0),
          Map.entry(Channels.AIR_MASS_FLOW, 100.0),
          Map.entry(Channels.AMBIENT_AIR_TEMP, 30.0),
          Map.entry(Channels.CHARGE_AIR_TEMP_IN, 90.0),
          Map.entry(Channels.CHARGE_AIR_TEMP_OUT, 48.0),
          Map.entry(Channels.CHARGE_COOLANT_TEMP, 42.0),
          Map.entry(Channels.ENGINE_COOLANT_TEMP, 90.0));

  private static ThermalForecaster driven(Vehicle vehicle, RoadAhead ahead) {
    return driven(vehicle, ahead, LEVEL);
  }

  private static ThermalForecaster driven(
      Vehicle vehicle, RoadAhead ahead, Map<Channel, Double> told) {
    ThermalForecaster forecaster = new ThermalForecaster(vehicle);
    for (int second = 1; second <= 200; second++) {
      long micros = second * 1_000_000L;
      told.forEach((channel, value) -> forecaster.accept(new Sample(channel, micros, value)));
      forecaster.accept(ahead);
      forecaster.tick(micros);
    }
    return forecaster;
  }

  /** Level here, and steep from some metres on. */
  private static RoadAhead climbFrom(int metres, int length) {
    double[] grades = new double[length / 50];
    double[] errors = new double[grades.length];
    Arrays.fill(grades, Math.min(grades.length, metres / 50), grades.length, 0.07);
    Arrays.fill(errors, 0.002);
    return new RoadAhead.Known(new GradeProfile(50, grades, errors), List.of());
  }

  private static Forecast next(ThermalForecaster forecaster) {
    return forecaster.tick(201_000_000L);
  }

  private static double median(Forecast forecast, double seconds) {
    return forecast.of(Channels.CHARGE_COOLANT_TEMP).orElseThrow()
            instanceof ChannelForecast.Ready ready
        ? ready.fan().at(Fan.MEDIAN, seconds)
        : Double.NaN;
  }

  @Test
  void aClimbAheadIsForetoldBeforeItBegins() {
    Forecast forecast = next(driven(TestVehicles.heavy(), climbFrom(1500, 10_000)));
    assertThat(forecast.assumption()).isEqualTo(new Forecast.Assumption.RoadKnown());
    assertThat(median(forecast, 30)).isLessThan(50);
    assertThat(median(forecast, 240)).isGreaterThan(median(forecast, 30) + 12);
  }

  @Test
  void aLevelRoadForetellsNoClimb() {
    Forecast forecast = next(driven(TestVehicles.heavy(), climbFrom(10_000, 10_000)));
    assertThat(median(forecast, 240)).isLessThan(54);
  }

  /** What a trailer weighs cannot be guessed; the road alone tells no load. */
  @Test
  void withoutTheRigsMassThePresentLoadIsHeldOnAKnownRoad() {
    Forecast forecast = next(driven(TestVehicles.light(), climbFrom(1500, 10_000)));
    assertThat(forecast.assumption()).isEqualTo(new Forecast.Assumption.LoadHeld());
    assertThat(median(forecast, 240)).isFinite().isLessThan(60);
  }

  /** How soon the climb comes, nobody knows then. */
  @Test
  void withoutARoadSpeedThePresentLoadIsHeldOnAKnownRoad() {
    Forecast forecast =
        next(
            driven(TestVehicles.heavy(), climbFrom(1500, 10_000), without(Channels.VEHICLE_SPEED)));
    assertThat(forecast.assumption()).isEqualTo(new Forecast.Assumption.LoadHeld());
  }

  @Test
  void whateverElseIsMissingAClimbAheadIsForetold() {
    for (Channel channel : LEVEL.keySet()) {
      if (NEEDED.contains(channel)) {
        continue;
      }
      Forecast forecast =
          next(driven(TestVehicles.heavy(), climbFrom(1500, 10_000), without(channel)));
      assertThat(median(forecast, 240))
          .as("without " + channel.id())
          .isGreaterThan(median(forecast, 30) + 5);
    }
  }

  private static final List<Channel> NEEDED =
      List.of(Channels.VEHICLE_SPEED, Channels.CHARGE_COOLANT_TEMP);

  private static Map<Channel, Double> without(Channel channel) {
    Map<Channel, Double> told = new HashMap<>(LEVEL);
    told.remove(channel);
    return told;
  }

  @Test
  void aFewHundredMetresAreNoRoadToPlanAlong() {
    Forecast forecast = next(driven(TestVehicles.heavy(), climbFrom(100, 300)));
    assertThat(forecast.assumption()).isEqualTo(new Forecast.Assumption.LoadHeld());
  }

  @Test
  void aRoadThatIsForgottenLeavesTheLoadHeld() {
    ThermalForecaster forecaster = driven(TestVehicles.heavy(), climbFrom(1500, 10_000));
    forecaster.accept(new RoadAhead.Unknown());
    assertThat(next(forecaster).assumption()).isEqualTo(new Forecast.Assumption.LoadHeld());
  }

  /** What is advised is tried along the same climb. */
  @Test
  void slowerUpTheClimbAheadIsCooler() {
    ThermalForecaster forecaster = driven(TestVehicles.heavy(), climbFrom(200, 10_000));
    double asWished = median(forecaster.under(new Forecast.Assumption.RoadKnown()), 240);
    double slower = median(forecaster.under(new Forecast.Assumption.SpeedEased(60)), 240);
    double stopped = median(forecaster.under(new Forecast.Assumption.StoppedAtIdle()), 240);
    assertThat(slower).isLessThan(asWished - 1);
    assertThat(stopped).isLessThan(slower);
  }
}
