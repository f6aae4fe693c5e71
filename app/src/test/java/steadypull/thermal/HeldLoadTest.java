package steadypull.thermal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import steadypull.road.RoadLoad;

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

  // The rig speeds up with all the engine has; that load ends when it has its speed.
  @Test
  void whatOnlySpeedsTheRigUpIsNotHeld() {
    RoadLoad road = new RoadLoad(7200, 0.011, 3.8, 1.15);
    LoadAssumption assumed =
        new LoadAssumption(new LoadMaps(), Optional.of(road), OptionalDouble.of(0.01));
    double steady = road.kilowatts(25, 0.01) / 0.9;
    assertThat(assumed.steady(load(160)).kilowatts()).isCloseTo(steady, within(0.1));
    assertThat(assumed.steady(load(20)).kilowatts()).isEqualTo(20);
    LoadAssumption blind =
        new LoadAssumption(new LoadMaps(), Optional.empty(), OptionalDouble.empty());
    assertThat(blind.steady(load(160)).kilowatts()).isEqualTo(160);
  }

  // Speed is told in whole km/h. A mean load that lost something at every step up and never won it
  // back at a step down was too low by 3 % on a steady climb.
  @Test
  void aStepOfTheSpeedsUnitTakesNoLoadAway() {
    RoadLoad road = new RoadLoad(7200, 0.011, 3.8, 1.15);
    double before = 160 * 0.9;
    // One km/h gained in the 8 s over which the grade is found, at 25 m/s: m v dv / dt at the
    // wheels.
    double gained = road.inertialKilograms() * 25 * (1 / 3.6) / 8 / 1000;
    assertThat(steadyUnder(road, before - gained).kilowatts()).isEqualTo(160);
    assertThat(steadyUnder(road, before - 2 * gained).kilowatts())
        .isCloseTo((before - 2 * gained) / 0.9, within(0.1));
  }

  /** The load of 160 kW of which so many at the wheels hold the speed. */
  private static Load steadyUnder(RoadLoad road, double kilowattsAtWheels) {
    double up = kilowattsAtWheels * 1000 / 25 - road.dragNewtons(25);
    return new LoadAssumption(new LoadMaps(), Optional.of(road), road.gradeUnder(up))
        .steady(load(160));
  }

  // Road ahead unknown: the band must know how much this drive's load wanders.
  @Test
  void aRollingRoadSpreadsTheLoadMoreThanASteadyOne() {
    LoadSpread steady = new LoadSpread();
    LoadSpread rolling = new LoadSpread();
    for (int second = 0; second < 1800; second++) {
      steady.accept(second, 120);
      rolling.accept(second, second / 60 % 2 == 0 ? 40 : 160);
    }
    assertThat(steady.kilowattsAfter(60, 100, 150, 1)).isBetween(100.0, 108.0);
    assertThat(rolling.kilowattsAfter(60, 100, 150, 1)).isGreaterThan(115);
    assertThat(rolling.kilowattsAfter(60, 100, 150, -1)).isLessThan(70);
    assertThat(rolling.kilowattsAfter(0, 100, 150, 1)).isEqualTo(100);
  }

  // Near its most an engine can only be let off; a spread to both sides would say otherwise.
  @Test
  void anEngineNearItsMostHasLittleMoreToGiveAndMuchToLose() {
    LoadSpread spread = new LoadSpread();
    double more = spread.kilowattsAfter(120, 148, 150, 3) - 148;
    double less = 148 - spread.kilowattsAfter(120, 148, 150, -3);
    assertThat(more).isBetween(0.0, 3.0);
    assertThat(less).isGreaterThan(20);
    assertThat(spread.kilowattsAfter(600, 5, 150, -3)).isNotNegative();
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
