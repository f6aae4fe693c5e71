package steadypull.thermal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Gears as engine turns per metre; powers by P = M n / 9549 (kW, N.m, r/min), by hand. */
class GearsSeenTest {
  private static final double METRES_PER_SECOND = 20;
  private static final double SPARE = 0.9;
  private static final double NEWTON_METRES = 600;

  private static GearsSeen seen(double... rpmAtTwenty) {
    GearsSeen gears = new GearsSeen();
    for (double rpm : rpmAtTwenty) {
      for (int second = 0; second < 20; second++) {
        gears.accept(rpm, METRES_PER_SECOND, 1);
      }
    }
    return gears;
  }

  private static double rpm(GearsSeen gears, double kilowatts) {
    return gears.rpm(kilowatts, METRES_PER_SECOND, NEWTON_METRES, SPARE, 1800);
  }

  @Test
  void theHighestGearThatDoesItIsTaken() {
    GearsSeen gears = seen(1700, 2200, 2900);
    // 600 N.m: 107, 138 and 182 kW, of which 0.9 are used.
    assertThat(rpm(gears, 90)).isCloseTo(1700, within(1.0));
    assertThat(rpm(gears, 120)).isCloseTo(2200, within(1.0));
    assertThat(rpm(gears, 140)).isCloseTo(2900, within(1.0));
  }

  @Test
  void aGearSeenForAMomentIsNone() {
    GearsSeen gears = seen(1700, 2900);
    gears.accept(2200, METRES_PER_SECOND, 2);
    assertThat(rpm(gears, 120)).isCloseTo(2900, within(1.0));
  }

  @Test
  void aPowerThatNoGearSeenGivesNeedsALowerOne() {
    assertThat(rpm(seen(1700), 150)).isBetween(2500.0, 3350.0);
  }

  @Test
  void anEngineIsNotLeftToLabour() {
    assertThat(seen(1700, 2200).rpm(10, 14, NEWTON_METRES, SPARE, 1800))
        .isCloseTo(2200 * 14 / METRES_PER_SECOND, within(1.0));
  }

  @Test
  void wholeKilometresPerHourMakeNoGearsOfTheirOwn() {
    GearsSeen gears = new GearsSeen();
    for (int second = 0; second < 60; second++) {
      double speed = 20 + 0.3 * Math.sin(second);
      gears.accept(85 * speed, Math.floor(speed * 3.6) / 3.6, 1);
    }
    assertThat(rpm(gears, 60)).isBetween(1690.0, 1740.0);
  }

  @Test
  void withoutAnyGearTheSpeedOfTheMomentStays() {
    assertThat(rpm(new GearsSeen(), 60)).isEqualTo(1800);
  }
}
