package steadypull.road.grade;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadypull.vehicle.Driveline;
import steadypull.vehicle.Rig;

class GearInferenceTest {
  private static final Rig RIG =
      new Rig(
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          OptionalDouble.of(0.40882));
  private static final GearInference GEARS =
      new GearInference(
          new Driveline(List.of(1.78, 1.38, 1.00), OptionalDouble.of(3.73), OptionalDouble.empty()),
          RIG);

  private static final double METRES_PER_SECOND = 20.1167;

  // Chain check from n = v / (2 pi r) * 60 * gear * axle, tyre of 275/70R18 (ETRTO designation)
  // with r = 408.8 mm, axle 3.73, 45 mph.
  @ParameterizedTest
  @CsvSource({"1752.7, 3", "2418.7, 2", "3119.8, 1"})
  void theWorkedEngineSpeedsGiveTheirGear(double rpm, int gear) {
    GearInference.Engaged engaged = GEARS.tell(rpm, METRES_PER_SECOND).orElseThrow();
    assertThat(engaged.gear()).isEqualTo(gear);
    assertThat(engaged.slip()).isZero();
  }

  @Test
  void aSlippingConverterIsToldApart() {
    GearInference.Engaged engaged = GEARS.tell(1752.7 * 1.12, METRES_PER_SECOND).orElseThrow();
    assertThat(engaged.gear()).isEqualTo(3);
    assertThat(engaged.slip()).isCloseTo(1 - 1 / 1.12, within(1e-3));
  }

  @Test
  void coastingInNeutralIsNoGear() {
    assertThat(GEARS.tell(700, METRES_PER_SECOND)).isEmpty();
  }

  @Test
  void anUnknownDrivelineTellsNothing() {
    assertThat(new GearInference(Driveline.unknown(), RIG).tell(1750, 20)).isEmpty();
  }
}
