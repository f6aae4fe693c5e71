package steadypull.road.grade;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import steadypull.road.RoadLoad;

class GradeFilterTest {
  private static final RoadLoad LOAD = new RoadLoad(7200, 0.011, 3.8, 1.15);

  private final GradeFilter filter = new GradeFilter();

  @Test
  void aSteadyClimbIsTold() {
    drive(0, 90, 22, 0, 0.06, OptionalDouble.empty());
    // the pull's scale is known to some per cent only: 0.08 of what 0.06 and the drag weigh
    assertThat(grade()).isCloseTo(0.06, within(0.004));
  }

  // Mistake to avoid: a grade that jumps because speed in whole km/h was differentiated, or because
  // acceleration was taken for a climb.
  @Test
  void accelerationOnTheFlatIsNoClimb() {
    drive(0, 20, 15, 0.4, 0, OptionalDouble.empty());
    assertThat(grade()).isCloseTo(0, within(0.006));
  }

  @Test
  void aWrongMassIsFoundOutByTheAltitude() {
    RoadLoad heavier = new RoadLoad(7200 * 1.1, 0.011, 3.8, 1.15);
    double metres = 0;
    for (int second = 0; second < 400; second++) {
      metres += 22;
      double pull = heavier.forceNewtons(22, 0.06);
      filter.accept(
          new RoadSecond(
              second,
              22,
              Optional.of(new Traction(pull, true, LOAD)),
              OptionalDouble.of(300 + metres * 0.06),
              false));
    }
    assertThat(grade()).isCloseTo(0.06, within(0.001));
  }

  @Test
  void anAltitudeThatJumpsIsNotBelieved() {
    drive(0, 120, 22, 0, 0.06, OptionalDouble.of(300));
    double before = grade();
    filter.accept(second(121, 22, 0, 0.06, OptionalDouble.of(300 + 121 * 22 * 0.06 + 40)));
    assertThat(grade()).isCloseTo(before, within(0.0005));
  }

  /** Whoever disbelieves for ever is lost for ever. */
  @Test
  void anAltitudeThatStaysElsewhereIsBelievedInTheEnd() {
    drive(0, 120, 22, 0, 0.06, OptionalDouble.of(300));
    double metres = 120 * 22;
    for (int second = 121; second < 240; second++) {
      metres += 22;
      filter.accept(second(second, 22, 0, 0.06, OptionalDouble.of(300 + 80 + metres * 0.06)));
    }
    assertThat(filter.estimate().orElseThrow().heightMetres())
        .isCloseTo(380 + metres * 0.06, within(10.0));
    assertThat(grade()).isCloseTo(0.06, within(0.006));
  }

  /** The smoother goes on from such a copy; one that forgot its disbelief would believe later. */
  @Test
  void aCopyTellsWhatTheOtherTells() {
    drive(0, 120, 22, 0, 0.06, OptionalDouble.of(300));
    GradeFilter copy = new GradeFilter(filter);
    for (int second = 121; second < 160; second++) {
      RoadSecond lost = second(second, 22, 0, 0.06, OptionalDouble.of(380 + second * 22 * 0.06));
      filter.accept(lost);
      copy.accept(lost);
      assertThat(copy.estimate()).isEqualTo(filter.estimate());
      copy = new GradeFilter(copy);
    }
  }

  @Test
  void aGapMakesTheGradeUncertainAgain() {
    drive(0, 60, 22, 0, 0.06, OptionalDouble.empty());
    double before = filter.estimate().orElseThrow().error();
    filter.accept(second(90, 22, 0, 0.06, OptionalDouble.empty()));
    assertThat(filter.estimate().orElseThrow().error()).isGreaterThan(2 * before);
  }

  /** A descent on the brakes says no more than that the road falls. */
  @Test
  void onTheBrakesTheGradeIsLessCertainThanUnderPull() {
    drive(0, 60, 22, 0, 0.03, OptionalDouble.empty());
    double pulling = filter.estimate().orElseThrow().error();
    for (int second = 61; second < 160; second++) {
      filter.accept(
          new RoadSecond(
              second,
              22,
              Optional.of(new Traction(-900, false, LOAD)),
              OptionalDouble.empty(),
              false));
    }
    assertThat(filter.estimate().orElseThrow().error()).isGreaterThan(1.5 * pulling);
    assertThat(grade()).isLessThan(-0.01);
  }

  /** A road turned around falls as it rose: nothing is held against the new grade. */
  @Test
  void behindATurnTheGradeIsAskedAnew() {
    double asked = Math.abs(gradeBehindATurn(true) + 0.05);
    double held = Math.abs(gradeBehindATurn(false) + 0.05);

    assertThat(asked).isLessThan(0.01).isLessThan(held / 2);
  }

  /** Three seconds down a road of 5 % after a minute up one of 6 %. */
  private static double gradeBehindATurn(boolean isTold) {
    GradeFilter turning = new GradeFilter();
    for (int second = 0; second <= 60; second++) {
      turning.accept(second(second, 8, 0, 0.06, OptionalDouble.of(300 + second * 8 * 0.06)));
    }
    for (int second = 61; second <= 63; second++) {
      double metresUp = 328.8 - (second - 60) * 8 * 0.05;
      Traction pull = new Traction(LOAD.forceNewtons(8, -0.05), true, LOAD);
      turning.accept(
          new RoadSecond(
              second, 8, Optional.of(pull), OptionalDouble.of(metresUp), isTold && second == 61));
    }
    return turning.estimate().orElseThrow().grade();
  }

  private double grade() {
    return filter.estimate().orElseThrow().grade();
  }

  private void drive(
      int from,
      int to,
      double startSpeed,
      double acceleration,
      double grade,
      OptionalDouble startAltitude) {
    for (int second = from; second <= to; second++) {
      double speed = startSpeed + acceleration * (second - from);
      OptionalDouble altitude =
          startAltitude.isPresent()
              ? OptionalDouble.of(startAltitude.getAsDouble() + second * speed * grade)
              : OptionalDouble.empty();
      filter.accept(second(second, speed, acceleration, grade, altitude));
    }
  }

  private static RoadSecond second(
      int second, double speed, double acceleration, double grade, OptionalDouble altitude) {
    double force = LOAD.forceNewtons(speed, grade) + LOAD.inertialKilograms() * acceleration;
    double shownSpeed = Math.rint(speed * 3.6) / 3.6;
    return new RoadSecond(
        second, shownSpeed, Optional.of(new Traction(force, true, LOAD)), altitude, false);
  }
}
