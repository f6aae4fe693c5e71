package steadypull.thermal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class CruiseSpeedTest {
  private static CruiseSpeed atTwentyFive() {
    CruiseSpeed cruise = new CruiseSpeed();
    drive(cruise, 25, false);
    return cruise;
  }

  private static void drive(CruiseSpeed cruise, double metresPerSecond, boolean isGivingAll) {
    for (int second = 0; second < 60; second++) {
      cruise.accept(metresPerSecond, isGivingAll, 1);
    }
  }

  @Test
  void aRigSlowedByTheGradeIsStillWishedFaster() {
    CruiseSpeed cruise = atTwentyFive();
    drive(cruise, 15, true);
    assertThat(cruise.metresPerSecond()).isCloseTo(25, within(0.1));
  }

  @Test
  void aDriverWhoEasesOffLikesItSlower() {
    CruiseSpeed cruise = atTwentyFive();
    drive(cruise, 15, false);
    assertThat(cruise.metresPerSecond()).isCloseTo(15, within(0.2));
  }
}
