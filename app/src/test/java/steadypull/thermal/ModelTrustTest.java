package steadypull.thermal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class ModelTrustTest {
  private final ModelTrust trust = new ModelTrust(3);
  private int second;

  @Test
  void aModelWithItsInputsThatForetellsWellIsNotTouched() {
    drive(300, 0.5, 0.5);
    assertThat(trust.plateauShare(true)).isZero();
  }

  @Test
  void aModelWithItsInputsIsNotTouchedForBeingALittleWorse() {
    drive(300, 1.2, 0.6);
    assertThat(trust.plateauShare(true)).isZero();
  }

  @Test
  void aModelThatFailsClearlyGivesWayEvenWithItsInputs() {
    drive(300, 8, 0.5);
    assertThat(trust.plateauShare(true)).isGreaterThan(0.8);
  }

  @Test
  void withoutInputsAModelThatFailsGivesWayWithinAMinuteAndAHalf() {
    drive(90, 4, 0.5);
    assertThat(trust.plateauShare(false)).isGreaterThan(0.8);
  }

  @Test
  void withoutInputsAModelThatForetellsBetterKeepsTheLead() {
    drive(300, 0.5, 4);
    assertThat(trust.plateauShare(false)).isLessThan(0.05);
  }

  @Test
  void aNewLoadWipesTheSlate() {
    double before = trust.plateauShare(false);
    drive(300, 8, 0.5);
    trust.restart();
    assertThat(trust.plateauShare(false)).isEqualTo(before);
    assertThat(trust.plateauShare(true)).isZero();
  }

  @Test
  void promisesAcrossAGapAreNotHeldAgainstAnyone() {
    double before = trust.plateauShare(false);
    trust.promise(0, _ -> 120, _ -> 90);
    trust.check(100, 90);
    assertThat(trust.plateauShare(false)).isEqualTo(before);
  }

  // Mean absolute error over 0.798 is the standard deviation of a normal distribution.
  @Test
  void theWanderIsLearntFromWhatPlateausMissWithinAMinute() {
    drive(2000, 0, 2);
    assertThat(trust.wanderKelvin()).isCloseTo(2 / 0.798, within(0.1));
  }

  private void drive(int seconds, double physicalMisses, double plateauMisses) {
    for (int i = 0; i < seconds; i++) {
      second++;
      trust.check(second, 90);
      trust.promise(second, _ -> 90 - physicalMisses, _ -> 90 + plateauMisses);
    }
  }
}
