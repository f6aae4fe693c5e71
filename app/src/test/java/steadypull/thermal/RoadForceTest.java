package steadypull.thermal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;
import steadypull.road.RoadLoad;

/**
 * What a rig really asks for, learnt on known grades; powers by the road-load equation, by hand.
 */
class RoadForceTest {
  private static final RoadLoad ENTERED = new RoadLoad(7000, 0.01, 4, 1.2);
  private static final double SPEED = 20;
  private static final double EFFICIENCY = 0.9;

  /** Newtons at 20 m/s on a grade, of a rig with other figures than entered. */
  private static double newtons(double kilograms, double wind, double grade) {
    double slope = Math.atan(grade);
    double through = SPEED + wind;
    return kilograms * 9.80665 * (Math.sin(slope) + 0.01 * Math.cos(slope))
        + 0.6 * 4 * through * through;
  }

  private static RoadForce driven(double kilograms, double wind, IntToDoubleFunction gradeAt) {
    RoadForce force = new RoadForce();
    for (int second = 0; second < 900; second++) {
      double grade = gradeAt.applyAsDouble(second);
      double kilowatts = newtons(kilograms, wind, grade) * SPEED / 1000 / EFFICIENCY;
      force.accept(ENTERED, 1, kilowatts, SPEED, grade);
    }
    return force;
  }

  private static double newtons(RoadForce.Draw draw, double grade) {
    return draw.newtons(ENTERED, SPEED, grade) + draw.beside(1);
  }

  private static double asked(RoadForce force, double grade) {
    return newtons(force.draw(0, 0, 0), grade);
  }

  private static double climbing(int second) {
    return second % 200 < 100 ? 0.01 : 0.06;
  }

  @Test
  void beforeItHasBeenDrivenARigIsTakenAsEntered() {
    assertThat(asked(new RoadForce(), 0.05)).isCloseTo(newtons(7000, 0, 0.05), within(1.0));
  }

  @Test
  void aRigHeavierThanEnteredIsFoundOut() {
    RoadForce heavier = driven(8000, 0, RoadForceTest::climbing);
    assertThat(asked(heavier, 0.06)).isCloseTo(newtons(8000, 0, 0.06), within(150.0));
    assertThat(heavier.draw(0, 0, 0).factor()).isBetween(1.07, 8.0 / 7);
  }

  @Test
  void headwindIsAForceNotAMass() {
    RoadForce windy = driven(7000, 8, RoadForceTest::climbing);
    assertThat(asked(windy, 0.06)).isCloseTo(newtons(7000, 8, 0.06), within(150.0));
    assertThat(windy.draw(0, 0, 0).factor()).isCloseTo(1, within(0.03));
  }

  @Test
  void whatIsLearntNarrowsTheDraws() {
    assertThat(width(driven(7000, 0, RoadForceTest::climbing)))
        .isLessThan(0.4 * width(new RoadForce()));
  }

  /** N between a draw on the one side and one on the other, on 6 %. */
  private static double width(RoadForce force) {
    return newtons(force.draw(1, 1, 0), 0.06) - newtons(force.draw(-1, -1, 0), 0.06);
  }

  /** Downhill the brakes hold, and engine power says nothing about the rig. */
  @Test
  void aDescentTeachesNothing() {
    RoadForce force = new RoadForce();
    for (int second = 0; second < 300; second++) {
      force.accept(ENTERED, 1, 0, SPEED, -0.06);
    }
    assertThat(asked(force, 0.05)).isCloseTo(newtons(7000, 0, 0.05), within(1.0));
  }

  /** Speeding up takes power that no grade asks for. */
  @Test
  void speedingUpIsNoHeavierRig() {
    RoadForce force = new RoadForce();
    for (int second = 0; second < 300; second++) {
      double speed = 12 + 0.4 * (second % 20);
      double drag = 0.6 * 4 * speed * speed;
      double newtons = 7000 * 9.80665 * 0.01 + drag + ENTERED.inertialKilograms() * 0.4;
      force.accept(ENTERED, 1, newtons * speed / 1000 / EFFICIENCY, speed, 0);
      if (second % 20 == 19) {
        force.interrupt();
      }
    }
    assertThat(force.draw(0, 0, 0).factor()).isCloseTo(1, within(0.05));
  }
}
