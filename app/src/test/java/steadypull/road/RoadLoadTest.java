package steadypull.road;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import steadypull.vehicle.Rig;

class RoadLoadTest {
  private static final RoadLoad HEAVY = new RoadLoad(11_800, 0.009, 4.2, 1.145);

  /** 45 mph. */
  private static final double METRES_PER_SECOND = 20.1167;

  // Worked by hand from F = m g Crr cos a + rho/2 CdA v2 + m g sin a (any vehicle-dynamics
  // handbook), to the digits given.
  @Test
  void everyForceOfTheWorkedCaseIsFound() {
    assertThat(HEAVY.rollingNewtons(0.05)).isCloseTo(1040.2, within(0.05));
    assertThat(HEAVY.dragNewtons(METRES_PER_SECOND)).isCloseTo(973.1, within(0.05));
    assertThat(HEAVY.gradeNewtons(0.05)).isCloseTo(5778.7, within(0.05));
    assertThat(HEAVY.forceNewtons(METRES_PER_SECOND, 0.05)).isCloseTo(7791.9, within(0.1));
    assertThat(HEAVY.kilowatts(METRES_PER_SECOND, 0.05)).isCloseTo(156.75, within(0.01));
  }

  @Test
  void onePerCentMoreGradeCostsWhatItWeighs() {
    assertThat(HEAVY.forceNewtons(METRES_PER_SECOND, 0.06)).isCloseTo(8943.3, within(0.1));
    assertThat(HEAVY.kilowatts(METRES_PER_SECOND, 0.06)).isCloseTo(179.91, within(0.01));
  }

  @ParameterizedTest
  @ValueSource(doubles = {-0.12, -0.03, 0, 0.05, 0.12})
  void theGradeComesBackFromItsForces(double grade) {
    double force = HEAVY.rollingNewtons(grade) + HEAVY.gradeNewtons(grade);
    assertThat(HEAVY.gradeUnder(force).orElseThrow()).isCloseTo(grade, within(1e-12));
  }

  @Test
  void aForceBeyondItsWeightIsNoGrade() {
    assertThat(HEAVY.gradeUnder(11_800 * 10)).isEmpty();
  }

  @Test
  void aRigOfUnknownMassHasNoLoad() {
    assertThat(RoadLoad.of(Rig.unknown(), 1.2)).isEmpty();
    Rig weighed =
        new Rig(
            OptionalDouble.of(7000),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty());
    assertThat(RoadLoad.of(weighed, 1.2)).isPresent();
  }
}
