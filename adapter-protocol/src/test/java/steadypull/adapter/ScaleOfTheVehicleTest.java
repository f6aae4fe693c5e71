package steadypull.adapter;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Values whose scale the vehicle itself declares or shows. In scripted time. */
class ScaleOfTheVehicleTest {
  private final ScriptedDrive drive = new ScriptedDrive();
  private final ScriptedVehicle vehicle = drive.vehicle;
  private final Recording recording = drive.recording;

  // Parameter 4F declares 640 kPa full scale: 100 * 640 / 255 = 251.0 (SAE J1699-3 cases for 4F).
  @Test
  void declaredFullScaleIsUsedForManifoldPressure() {
    vehicle.parameter("7E8", 0x0B, "64").parameter("7E8", 0x4F, "00000040");

    drive.go(5);

    assertThat(recording.of("01.0B"))
        .isNotEmpty()
        .allSatisfy(r -> assertThat(r.value()).isCloseTo(251.0, within(0.05)));
  }

  // Each control unit's full scale is its own: 7E9 declares 320 kPa, 7E8, which is believed, 640.
  @Test
  void fullScaleOfAnotherControlUnitIsNotUsed() {
    vehicle
        .parameter("7E8", 0x0B, "64")
        .parameter("7E8", 0x4F, "00000040")
        .parameter("7E9", 0x0B, "64")
        .parameter("7E9", 0x4F, "00000020");

    drive.go(5);

    assertThat(recording.of("01.0B"))
        .isNotEmpty()
        .allSatisfy(r -> assertThat(r.value()).isCloseTo(251.0, within(0.05)));
  }

  // A second control unit that declares a full scale says nothing about the first.
  @Test
  void controlUnitThatDeclaresNoFullScaleKeepsTheUsualOne() {
    vehicle.parameter("7E8", 0x0B, "64").parameter("7E9", 0x4F, "00000020");

    drive.go(5);

    assertThat(recording.of("01.0B")).isNotEmpty().allMatch(r -> r.value() == 100.0);
  }

  // Parameter 74 in tens would be 600 000 r/min: from then on it is counted in single turns.
  @Test
  void turboSpeedIsReadInSingleTurnsOnceTensCannotBe() {
    drive.wanted = Set.of("01.74.1", "01.0C");
    vehicle.parameter("7E8", 0x74, "0127100000");

    drive.go(
        20,
        now -> {
          if (now > 10) {
            vehicle.parameter("7E8", 0x74, now < 15 ? "01EA600000" : "0127100000");
          }
        });

    List<Reading> speeds = recording.of("01.74.1");
    assertThat(speeds.getFirst().value()).isEqualTo(100_000);
    assertThat(speeds).anyMatch(r -> r.value() == 60_000);
    assertThat(speeds.getLast().value()).isEqualTo(10_000);
  }
}
