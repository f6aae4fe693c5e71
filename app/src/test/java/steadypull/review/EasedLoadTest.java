package steadypull.review;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** Which changes of power and speed behind a warning are the driver's own. */
class EasedLoadTest {
  private static final int WARNED = 200;
  private static final double[] SAME = changed(1, 0);
  private static final boolean[] UNCUT = new boolean[400];

  @Test
  void lessPowerAtLessSpeedWithinAMinuteIsEased() {
    assertThat(EasedLoad.isSeen(WARNED, changed(0.8, 30), changed(0.9, 30), UNCUT)).isTrue();
  }

  @Test
  void laterIsTooLate() {
    assertThat(EasedLoad.isSeen(WARNED, changed(0.8, 61), changed(0.9, 61), UNCUT)).isFalse();
  }

  /** A crest takes power and no speed, a steeper road speed and no power. */
  @Test
  void theRoadAloneDoesNotLookLikeIt() {
    assertThat(EasedLoad.isSeen(WARNED, changed(0.5, 10), SAME, UNCUT)).isFalse();
    assertThat(EasedLoad.isSeen(WARNED, SAME, changed(0.7, 10), UNCUT)).isFalse();
    assertThat(EasedLoad.isSeen(WARNED, SAME, SAME, UNCUT)).isFalse();
  }

  @Test
  void whatTheEngineControlTookTheDriverDidNotGive() {
    boolean[] cut = new boolean[400];
    Arrays.fill(cut, 220, 300, true);
    assertThat(EasedLoad.isSeen(WARNED, changed(0.7, 20), changed(0.8, 20), cut)).isFalse();
  }

  @Test
  void whereNobodyToldPowerOrSpeedNothingIsSeen() {
    double[] unknown = new double[400];
    Arrays.fill(unknown, Double.NaN);
    assertThat(EasedLoad.isSeen(WARNED, unknown, changed(0.8, 20), UNCUT)).isFalse();
    assertThat(EasedLoad.isSeen(WARNED, changed(0.8, 20), unknown, UNCUT)).isFalse();
  }

  @Test
  void atTheVeryEndOfADriveNothingIsSeen() {
    assertThat(EasedLoad.isSeen(399, changed(0.8, 20), changed(0.8, 20), UNCUT)).isFalse();
    assertThat(EasedLoad.isSeen(1, SAME, SAME, UNCUT)).isFalse();
  }

  /** 100, and a share of it from so many seconds behind the warning on. */
  private static double[] changed(double share, int after) {
    double[] values = new double[400];
    Arrays.setAll(values, second -> second >= WARNED + after ? share * 100 : 100);
    return values;
  }
}
