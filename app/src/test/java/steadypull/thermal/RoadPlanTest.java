package steadypull.thermal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import steadypull.road.GradeProfile;
import steadypull.road.RoadLoad;

/**
 * A load planned along a road, against the road-load equation by hand: F = m g (Crr + grade) /
 * sqrt(1 + grade2) + rho/2 CdA v2, P = F v / 0.9.
 */
class RoadPlanTest {
  private static final RoadLoad RIG = new RoadLoad(7000, 0.01, 4, 1.2);
  private static final double SPEED = 20;
  private static final double[] AHEAD = HorizonGrid.secondsAhead();

  private static Slope slope(double grade) {
    double[] grades = new double[400];
    Arrays.fill(grades, grade);
    return Slope.of(new GradeProfile(50, grades, new double[400]));
  }

  private static RoadPlan plan(double newtonMetres) {
    GearsSeen gears = new GearsSeen();
    for (double rpm : new double[] {1600, 2100, 2800}) {
      for (int second = 0; second < 20; second++) {
        gears.accept(rpm, SPEED, 1);
      }
    }
    return new RoadPlan(new LoadMaps(), RIG, gears, new PullGuess(newtonMetres, 0.02));
  }

  private static Load[] loads(RoadPlan plan, Load now, double cruise, Slope way) {
    RoadPlan.Draw draw = new RoadPlan.Draw(way, new RoadForce.Draw(1, 0, 0), 0, 0, 0, 0);
    PlannedDrive drive = plan.drive(now, cruise, draw);
    Load[] loads = new Load[AHEAD.length];
    loads[0] = now;
    for (int point = 1; point < loads.length; point++) {
      loads[point] = drive.next(AHEAD[point] - AHEAD[point - 1], 1);
    }
    return loads;
  }

  private static Load now(double metresPerSecond) {
    return new Load(60, 1600, metresPerSecond, 150, 0.1, 25);
  }

  private static double kilowatts(double metresPerSecond, double grade) {
    double byMass = 7000 * 9.80665 * (0.01 + grade) / Math.sqrt(1 + grade * grade);
    double drag = 0.6 * 4 * metresPerSecond * metresPerSecond;
    return (byMass + drag) * metresPerSecond / 1000 / 0.9;
  }

  @Test
  void aSteadyGradeTakesWhatTheRoadLoadEquationSays() {
    Load[] loads = loads(plan(700), now(SPEED), SPEED, slope(0.05));
    assertThat(loads[10].kilowatts()).isCloseTo(kilowatts(SPEED, 0.05), within(0.5));
    assertThat(kilowatts(SPEED, 0.05)).isCloseTo(112.7, within(0.1));
    assertThat(loads[10].metresPerSecond()).isCloseTo(SPEED, within(0.01));
    assertThat(loads[10].engineRpm()).isCloseTo(2100, within(5.0));
  }

  /** 400 N.m give 117 kW at 2800 r/min; 8 % at 20 m/s would take 162. */
  @Test
  void aGradeTooSteepForTheEngineSlowsTheRigToWhatItHolds() {
    Load[] loads = loads(plan(400), now(SPEED), SPEED, slope(0.08));
    Load later = loads[AHEAD.length - 1];
    assertThat(later.metresPerSecond()).isLessThan(0.85 * SPEED);
    assertThat(later.kilowatts())
        .isCloseTo(kilowatts(later.metresPerSecond(), 0.08), within(2.0))
        .isLessThan(118);
  }

  @Test
  void aDescentAsksForNothing() {
    Load[] loads = loads(plan(700), now(SPEED), SPEED, slope(-0.06));
    assertThat(loads[10].kilowatts()).isZero();
    assertThat(loads[10].metresPerSecond()).isCloseTo(SPEED, within(0.01));
  }

  @Test
  void theClimbIsSeenWhenItBeginsAndNotBefore() {
    double[] grades = new double[400];
    Arrays.fill(grades, 24, 400, 0.06);
    Slope flatThenUp = Slope.of(new GradeProfile(50, grades, new double[400]));
    Load[] loads = loads(plan(700), now(SPEED), SPEED, flatThenUp);
    assertThat(at(loads, 40).kilowatts()).isCloseTo(kilowatts(SPEED, 0), within(0.5));
    assertThat(at(loads, 80).kilowatts()).isCloseTo(kilowatts(SPEED, 0.06), within(1.0));
  }

  @Test
  void airAheadIsColderAndThinnerUpAClimb() {
    Load later = at(loads(plan(700), now(SPEED), SPEED, slope(0.05)), 100);
    // 100 m up: 0.65 K and 1.2 kPa of the standard atmosphere (ISO 2533).
    assertThat(later.outsideCelsius()).isCloseTo(25 - 0.65, within(0.05));
    assertThat(later.outsideKilopascals()).isCloseTo(101.325 - 1.19, within(0.06));
  }

  @Test
  void aSlowRigIsSpedUpToWhatItsDriverLikes() {
    Load[] loads = loads(plan(700), now(12), SPEED, slope(0));
    assertThat(loads[1].kilowatts()).isGreaterThan(kilowatts(12, 0) + 20);
    assertThat(at(loads, 120).metresPerSecond()).isCloseTo(SPEED, within(0.2));
  }

  @Test
  void aRigAtRestMakesNoNonsense() {
    for (double grade : new double[] {-0.12, 0, 0.12}) {
      for (Load load : loads(plan(700), now(0), 0, slope(grade))) {
        assertThat(load.kilowatts()).isFinite().isNotNegative();
        assertThat(load.engineRpm()).isFinite().isNotNegative();
        assertThat(load.metresPerSecond()).isFinite().isNotNegative();
        assertThat(load.airKilogramsPerSecond()).isFinite();
        assertThat(load.airFlowLogarithm()).isFinite();
      }
    }
  }

  private static Load at(Load[] loads, double seconds) {
    for (int point = 1; point < AHEAD.length; point++) {
      if (AHEAD[point] >= seconds) {
        return loads[point];
      }
    }
    throw new AssertionError("The grid ends before " + seconds);
  }
}
