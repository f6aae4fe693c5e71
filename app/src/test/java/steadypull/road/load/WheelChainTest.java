package steadypull.road.load;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.road.RoadLoad;
import steadypull.road.grade.DerivedChannels;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.Driveline;
import steadypull.vehicle.Rig;
import steadypull.vehicle.TyreSize;
import steadypull.vehicle.Vehicle;

// The chain of the worked road load: 11 800 kg, 5 %, 45 mph, 156.75 kW at the wheels; tyre
// 275/70R18, axle 3.73, efficiency 0.92. T_wheel = T gear axle efficiency, n = v / (2 pi r) 60 gear
// axle, P = T n / 9549.3 (any vehicle-dynamics handbook), worked by hand to the digits given.
class WheelChainTest {
  private static final double METRES_PER_SECOND = 20.1167;
  private static final WheelChain CHAIN = new WheelChain(3.73, 0.40882, 0.92);
  private static final double NEWTONS =
      new RoadLoad(11_800, 0.009, 4.2, 1.145).forceNewtons(METRES_PER_SECOND, 0.05);

  @ParameterizedTest
  @CsvSource({"1.00, 928.3, 1752.7", "1.38, 672.7, 2418.7", "1.78, 521.5, 3119.8"})
  void everyGearOfTheWorkedChainIsFound(double gear, double newtonMetres, double rpm) {
    WheelChain.Engine engine = CHAIN.engine(NEWTONS, METRES_PER_SECOND, gear);

    assertThat(engine.newtonMetres()).isCloseTo(newtonMetres, within(0.05));
    assertThat(engine.rpm()).isCloseTo(rpm, within(0.05));
    assertThat(engine.kilowatts()).isCloseTo(170.38, within(0.01));
  }

  @ParameterizedTest
  @CsvSource({"1.00, 928.3", "1.38, 672.7", "1.78, 521.5"})
  void theEnginesTorqueComesOutAtTheWheels(double gear, double newtonMetres) {
    assertThat(CHAIN.wheelNewtonMetres(newtonMetres, gear)).isCloseTo(3185.5, within(0.5));
    assertThat(CHAIN.wheelNewtons(newtonMetres, gear)).isCloseTo(NEWTONS, within(1.0));
  }

  @ParameterizedTest
  @CsvSource({"4.2, 300", "1.0, 640", "0.65, 12"})
  void backAndForthGivesTheSame(double gear, double newtonMetres) {
    double newtons = CHAIN.wheelNewtons(newtonMetres, gear);
    assertThat(CHAIN.engine(newtons, 15, gear).newtonMetres())
        .isCloseTo(newtonMetres, within(1e-9));
  }

  // 0.40882 m is the radius of that tyre to the last digit given.
  @Test
  void theTyreOfTheWorkedChainIsItsDesignations() {
    assertThat(TyreSize.of("275/70R18").rollingRadiusMetres()).isCloseTo(0.40882, within(5e-6));
  }

  /** What is derived live is the same chain, with the efficiency that is usual. */
  @Test
  void theDerivedChannelsGiveTheWorkedTorqueAtTheirEfficiency() {
    Rig rig = Rig.unknown().withTyreRadius(OptionalDouble.of(0.40882));
    Vehicle vehicle =
        Vehicle.unknown("any", CoolingLayout.AIR_TO_AIR)
            .withRig(rig)
            .withDriveline(
                new Driveline(
                    List.of(1.78, 1.38, 1.00), OptionalDouble.of(3.73), OptionalDouble.empty()));
    DerivedChannels channels = new DerivedChannels(vehicle);
    channels.accept(new Sample(Channels.VEHICLE_SPEED, 900_000, METRES_PER_SECOND * 3.6));
    channels.accept(new Sample(Channels.ENGINE_SPEED, 900_000, 1752.7));
    channels.accept(new Sample(Channels.REFERENCE_TORQUE, 900_000, 1000));
    // 928.3 N.m at the crankshaft and 8 % of friction
    channels.accept(new Sample(Channels.DELIVERED_TORQUE, 900_000, 92.83 + 8));

    Sample torque =
        channels.tick(1_000_000).stream()
            .filter(sample -> sample.channel().equals(Channels.WHEEL_TORQUE))
            .findFirst()
            .orElseThrow();
    assertThat(torque.value())
        .isCloseTo(3185.5 / 0.92 * DerivedChannels.DRIVELINE_EFFICIENCY, within(0.5));
  }

  @Test
  void aChainThatGivesMoreThanItGetsIsRefused() {
    assertThatThrownBy(() -> new WheelChain(3.73, 0.4, 1.01)).hasMessageContaining("found");
    assertThatThrownBy(() -> new WheelChain(3.73, 0, 0.9)).hasMessageContaining("found");
  }
}
