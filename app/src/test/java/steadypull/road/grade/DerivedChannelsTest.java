package steadypull.road.grade;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.Driveline;
import steadypull.vehicle.Rig;
import steadypull.vehicle.SpeedRange;
import steadypull.vehicle.Vehicle;

class DerivedChannelsTest {
  private static final Rig WEIGHED =
      new Rig(
          OptionalDouble.of(7200),
          OptionalDouble.of(3.8),
          OptionalDouble.of(0.011),
          OptionalDouble.of(0.39));

  // 600 N.m net at 2000 r/min is 125.66 kW (P = 2 pi n T); 0.9 of it reaches the wheels.
  @Test
  void wheelPowerAndTorqueFollowFromEngineTorque() {
    List<Sample> derived = lastOf(new DerivedChannels(vehicle(WEIGHED)));
    assertThat(value(derived, Channels.WHEEL_POWER)).isCloseTo(113.1, within(0.1));
    assertThat(value(derived, Channels.WHEEL_TORQUE)).isCloseTo(113_100 / 20.0 * 0.39, within(3.0));
    assertThat(value(derived, Channels.ROAD_GRADE)).isBetween(5.0, 7.5);
  }

  @Test
  void gradeIsNotToldWithoutMassNorTorqueWithoutTyre() {
    List<Sample> derived = lastOf(new DerivedChannels(vehicle(Rig.unknown())));
    assertThat(derived).extracting(Sample::channel).containsExactly(Channels.WHEEL_POWER);
  }

  @Test
  void nothingIsToldFromStaleInputs() {
    DerivedChannels channels = new DerivedChannels(vehicle(WEIGHED));
    lastOf(channels);
    assertThat(channels.tick(40_000_000)).isEmpty();
  }

  // 61.7 % is 53.7 % net: 537 N.m at 2000 r/min, 112.4689 kW, of which 0.9 are 101.222 kW and, at
  // 20 m/s with wheels of 0.39 m, 1973.83 N.m (P = 2 pi n T, by hand).
  @Test
  void digitsThatMeanNothingAreRoundedAway() {
    DerivedChannels channels = new DerivedChannels(vehicle(WEIGHED));
    lastOf(channels);
    channels.accept(new Sample(Channels.DELIVERED_TORQUE, 20_500_000, 61.7));
    List<Sample> derived = channels.tick(21_000_000);
    assertThat(value(derived, Channels.WHEEL_POWER)).isEqualTo(101.2);
    assertThat(value(derived, Channels.WHEEL_TORQUE)).isEqualTo(1974);
    double grade = value(derived, Channels.ROAD_GRADE);
    assertThat(grade).isEqualTo(Math.round(grade * 100) / 100.0);
  }

  @Test
  void whatCanNeverBeToldIsNotPossible() {
    List<Channel> measured =
        List.of(
            Channels.REFERENCE_TORQUE,
            Channels.DELIVERED_TORQUE,
            Channels.ENGINE_SPEED,
            Channels.VEHICLE_SPEED);
    assertThat(new DerivedChannels(vehicle(WEIGHED)).possible(measured))
        .containsExactlyElementsOf(Channels.derived());
    assertThat(new DerivedChannels(vehicle(Rig.unknown())).possible(measured))
        .containsExactly(Channels.WHEEL_POWER);
    assertThat(new DerivedChannels(vehicle(WEIGHED)).possible(measured.subList(1, 4))).isEmpty();
  }

  private static List<Sample> lastOf(DerivedChannels channels) {
    List<Sample> derived = List.of();
    for (int second = 1; second <= 20; second++) {
      long micros = second * 1_000_000L;
      channels.accept(new Sample(Channels.REFERENCE_TORQUE, micros, 1000));
      channels.accept(new Sample(Channels.DELIVERED_TORQUE, micros, 68));
      channels.accept(new Sample(Channels.ENGINE_SPEED, micros, 2000));
      channels.accept(new Sample(Channels.VEHICLE_SPEED, micros, 72));
      derived = channels.tick(micros);
    }
    return derived;
  }

  private static double value(List<Sample> samples, Channel channel) {
    return samples.stream()
        .filter(sample -> sample.channel().equals(channel))
        .mapToDouble(Sample::value)
        .findFirst()
        .orElseThrow();
  }

  private static Vehicle vehicle(Rig rig) {
    return new Vehicle(
        "Test",
        CoolingLayout.WATER_TO_AIR,
        Map.of(),
        rig,
        Driveline.unknown(),
        SpeedRange.DEFAULT,
        List.of(),
        List.of());
  }
}
