package steadypull.thermal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class HeldLoadTest {
  private final HeldLoad held = new HeldLoad();

  @Test
  void aGearChangeCutIsNotTheLoad() {
    hold(0, 30, 150);
    hold(30, 32, 5);
    hold(32, 35, 150);
    assertThat(kilowatts()).isCloseTo(150, within(1e-9));
  }

  @Test
  void aStepOntoAGradeIsFollowedWithinEightSeconds() {
    hold(0, 30, 60);
    hold(30, 38, 160);
    assertThat(kilowatts()).isGreaterThan(60 + 0.75 * 100);
  }

  @Test
  void afterAGapOnlyTheNewLoadCounts() {
    hold(0, 30, 160);
    held.accept(120, load(20));
    assertThat(kilowatts()).isEqualTo(20);
  }

  // Road ahead unknown: the band must know how much this drive's load wanders.
  @Test
  void aRollingRoadSpreadsTheLoadMoreThanASteadyOne() {
    LoadSpread steady = new LoadSpread();
    LoadSpread rolling = new LoadSpread();
    for (int second = 0; second < 900; second++) {
      steady.accept(second, 120);
      rolling.accept(second, second / 60 % 2 == 0 ? 40 : 160);
    }
    assertThat(steady.kilowattsAfter(60)).isLessThan(5);
    assertThat(rolling.kilowattsAfter(60)).isGreaterThan(60);
    assertThat(rolling.kilowattsAfter(0)).isZero();
  }

  private void hold(int from, int to, double kilowatts) {
    for (int second = from; second < to; second++) {
      held.accept(second, load(kilowatts));
    }
  }

  private double kilowatts() {
    return held.load().orElseThrow().kilowatts();
  }

  private static Load load(double kilowatts) {
    return new Load(kilowatts, 2000, 25, kilowatts * 2.5, kilowatts * 0.0013, 30);
  }
}
