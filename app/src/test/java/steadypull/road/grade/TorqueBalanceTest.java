package steadypull.road.grade;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import steadypull.road.RoadLoad;

class TorqueBalanceTest {
  private static final RoadLoad LOAD = new RoadLoad(7200, 0.011, 3.8, 1.15);

  private final TorqueBalance estimate = new TorqueBalance();

  @Test
  void aSteadyClimbIsTold() {
    drive(20, 22, 0, 0.06);
    assertThat(estimate.grade(LOAD).orElseThrow()).isCloseTo(0.06, within(0.002));
  }

  // Mistake to avoid: a grade that jumps because speed in whole km/h was differentiated, or because
  // acceleration was taken for a climb.
  @Test
  void accelerationOnTheFlatIsNoClimb() {
    drive(20, 15, 0.4, 0);
    assertThat(estimate.grade(LOAD).orElseThrow()).isCloseTo(0, within(0.006));
  }

  @Test
  void theGradeIsNotToldWhileTheEngineDoesNotPull() {
    drive(20, 22, 0, 0.06);
    estimate.accept(21, LOAD, 2, 1.8, 22);
    assertThat(estimate.grade(LOAD)).isEmpty();
  }

  @Test
  void aGapForgetsWhatWas() {
    drive(20, 22, 0, 0.06);
    estimate.accept(40, LOAD, 150, 135, 22);
    assertThat(estimate.grade(LOAD)).isEmpty();
  }

  @Test
  void anInterruptionForgetsWhatWas() {
    drive(20, 22, 0, 0.06);
    estimate.interrupt();
    assertThat(estimate.grade(LOAD)).isEmpty();
  }

  private void drive(int seconds, double startSpeed, double acceleration, double grade) {
    for (int second = 0; second <= seconds; second++) {
      double speed = startSpeed + acceleration * second;
      double force = LOAD.forceNewtons(speed, grade) + LOAD.inertialKilograms() * acceleration;
      double wheelKilowatts = force * speed / 1000;
      double shownSpeed = Math.rint(speed * 3.6) / 3.6;
      estimate.accept(second, LOAD, wheelKilowatts / 0.9, wheelKilowatts, shownSpeed);
    }
  }
}
