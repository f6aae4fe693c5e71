package steadypull.road.grade;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import java.util.stream.Stream;
import org.hipparchus.linear.RealMatrix;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import steadypull.road.RoadLoad;

class GradeStepTest {
  private static final RoadLoad LOAD = new RoadLoad(7200, 0.011, 3.8, 1.15);
  private static final double[] STATE = {21, 310, 0.055, 2e-5, 3, 0.003, 0.04, 0.2};

  /** Small against what a state is usually worth, in its own unit. */
  private static final double[] STEPS = {1e-3, 1e-2, 1e-5, 1e-7, 1e-2, 1e-5, 1e-4, 1e-4};

  static Stream<RoadObservation> steps() {
    Optional<RoadObservation.Pull> pulled =
        Optional.of(new RoadObservation.Pull(new Traction(6000, true, LOAD), 0.83, 0.02));
    Optional<RoadObservation.Pull> braked =
        Optional.of(new RoadObservation.Pull(new Traction(-900, false, LOAD), -0.12, 0.02));
    Optional<Turn> back = Optional.of(new Turn(9.5, true));
    return Stream.of(
        observation(pulled, Optional.empty()),
        observation(braked, Optional.empty()),
        observation(Optional.empty(), Optional.empty()),
        observation(pulled, back),
        observation(braked, back));
  }

  /** Both were derived by hand from one equation of motion; central differences compare them. */
  @ParameterizedTest
  @MethodSource("steps")
  void theTransitionIsTheDerivativeOfTheMotion(RoadObservation observation) {
    RealMatrix transition = new GradeStep(STATE, 9, observation).transition();
    for (int from = 0; from < GradeProcess.SIZE; from++) {
      double[] more = moved(from, STEPS[from], observation);
      double[] less = moved(from, -STEPS[from], observation);
      for (int to = 0; to < GradeProcess.SIZE; to++) {
        double slope = (more[to] - less[to]) / 2 / STEPS[from];
        // left out: what a step's own gain adds to its height, half an acceleration, and that a
        // faster step drives a metre more of a bend
        double tolerance = to == GradeProcess.HEIGHT ? 1 : 1e-3 * Math.max(0.05, Math.abs(slope));
        assertThat(transition.getEntry(to, from))
            .as("state %d by state %d", to, from)
            .isCloseTo(slope, within(tolerance));
      }
    }
  }

  /** On a steady descent the foot stays; whoever turns moves it, and nobody knows how. */
  @Test
  void whoTurnsMovesTheFoot() {
    Optional<RoadObservation.Pull> braked =
        Optional.of(new RoadObservation.Pull(new Traction(-900, false, LOAD), -0.12, 0.02));
    double[] hard = STATE.clone();
    hard[GradeProcess.BRAKES] = 0.9;
    double[] steady = new GradeStep(hard, 9, observation(braked, Optional.empty())).moved();
    double[] turned =
        new GradeStep(hard, 9, observation(braked, Optional.of(new Turn(9.5, false)))).moved();
    assertThat(steady[GradeProcess.BRAKES]).isGreaterThan(0.8);
    assertThat(turned[GradeProcess.BRAKES]).isEqualTo(GradeNoise.BRAKES_MEAN);
  }

  private static double[] moved(int state, double step, RoadObservation observation) {
    double[] beside = STATE.clone();
    beside[state] += step;
    return new GradeStep(beside, 9, observation).moved();
  }

  private static RoadObservation observation(
      Optional<RoadObservation.Pull> pull, Optional<Turn> turn) {
    return new RoadObservation(10, RoadObservation.Kind.SPEED, 21, pull, turn);
  }
}
