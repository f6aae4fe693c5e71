package steadypull.road.load;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import steadypull.road.RoadLoad;

class GradeEquivalentTest {
  private static final RoadLoad HEAVY = new RoadLoad(11_800, 0.009, 4.2, 1.145);

  /** 45 mph. */
  private static final double METRES_PER_SECOND = 20.1167;

  // The worked road loads of 5 and 6 % (F = m g Crr cos a + rho/2 CdA v2 + m g sin a, by hand).
  @ParameterizedTest
  @CsvSource({"156.75, 5.0", "179.91, 6.0"})
  void aPowerOnTheRollersIsTheGradeThatTakesIt(double kilowatts, double percent) {
    GradeEquivalent road =
        GradeEquivalent.ofWheelPower(HEAVY, METRES_PER_SECOND, kilowatts).orElseThrow();
    assertThat(road.grade() * 100).isCloseTo(percent, within(0.001));
  }

  @ParameterizedTest
  @ValueSource(doubles = {-0.02, 0, 0.03, 0.12})
  void thereAndBackIsTheSameRoad(double grade) {
    GradeEquivalent road = new GradeEquivalent(HEAVY, 25, grade);
    assertThat(GradeEquivalent.ofWheelPower(HEAVY, 25, road.kilowatts()).orElseThrow().grade())
        .isCloseTo(grade, within(1e-12));
  }

  @Test
  void otherSpeedsAndRigsTakeTheSamePower() {
    GradeEquivalent road = new GradeEquivalent(HEAVY, METRES_PER_SECOND, 0.05);
    RoadLoad light = new RoadLoad(7000, 0.011, 3.8, 1.0);

    assertThat(road.at(12).orElseThrow().kilowatts()).isCloseTo(road.kilowatts(), within(1e-9));
    assertThat(road.of(light).orElseThrow().kilowatts()).isCloseTo(road.kilowatts(), within(1e-9));
    assertThat(road.at(12).orElseThrow().grade()).isGreaterThan(0.05);
    assertThat(road.of(light).orElseThrow().grade()).isGreaterThan(0.05);
  }

  @Test
  void aSteeperGradeHoldsALowerSpeed() {
    GradeEquivalent road = new GradeEquivalent(HEAVY, METRES_PER_SECOND, 0.05);
    GradeEquivalent steeper = road.on(0.08).orElseThrow();

    assertThat(steeper.kilowatts()).isCloseTo(road.kilowatts(), within(1e-3));
    assertThat(steeper.metresPerSecond()).isLessThan(METRES_PER_SECOND);
    assertThat(road.on(0.05).orElseThrow().metresPerSecond())
        .isCloseTo(METRES_PER_SECOND, within(1e-5));
  }

  @Test
  void whatNoRoadAsksIsNoGrade() {
    assertThat(GradeEquivalent.ofWheelPower(HEAVY, 2, 5000)).isEmpty();
  }

  @Test
  void whoRollsByItselfHasNoSpeedToHold() {
    assertThat(new GradeEquivalent(HEAVY, 20, -0.06).on(0.02)).isEmpty();
    assertThat(new GradeEquivalent(HEAVY, 20, 0.05).on(-0.9)).isEmpty();
  }
}
