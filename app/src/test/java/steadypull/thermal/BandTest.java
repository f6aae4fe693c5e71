package steadypull.thermal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

class BandTest {
  private static final double[] SECONDS = HorizonGrid.secondsAhead();

  @Test
  void theBandIsNothingWideNowAndNeverNarrows() {
    for (long seed = 1; seed <= 50; seed++) {
      Fan fan = Band.fan(SECONDS, randomCourses(new Random(seed)));
      for (int level = 0; level < Fan.LEVELS.size(); level++) {
        assertThat(fan.celsius(level, 0)).as("seed %d", seed).isEqualTo(80);
      }
      for (int point = 1; point < fan.size(); point++) {
        assertThat(width(fan, point))
            .as("seed %d", seed)
            .isGreaterThanOrEqualTo(width(fan, point - 1) - 1e-9);
      }
    }
  }

  @Test
  void quantilesAreInTheirOrder() {
    for (long seed = 1; seed <= 50; seed++) {
      Fan fan = Band.fan(SECONDS, randomCourses(new Random(seed)));
      for (int point = 0; point < fan.size(); point++) {
        for (int level = 1; level < Fan.LEVELS.size(); level++) {
          assertThat(fan.celsius(level, point))
              .as("seed %d", seed)
              .isGreaterThanOrEqualTo(fan.celsius(level - 1, point));
        }
      }
    }
  }

  // A count of courses jumps by a whole course; what is said to a driver must not.
  @Test
  void theProbabilityMovesSmoothlyWithTheLimit() {
    double[][] draws = {{90, 96}, {90, 97}, {90, 106}, {90, 110}};
    double[] seconds = {0, 100};
    assertThat(LimitCrossing.probability(seconds, draws, 180, 101.5)).isCloseTo(0.5, within(1e-9));
    assertThat(LimitCrossing.probability(seconds, draws, 180, 97)).isCloseTo(0.625, within(1e-9));
    assertThat(LimitCrossing.probability(seconds, draws, 180, 106)).isCloseTo(0.375, within(1e-9));
    assertThat(LimitCrossing.probability(seconds, draws, 180, 111)).isZero();
    assertThat(LimitCrossing.probability(seconds, draws, 180, 95)).isEqualTo(1);
  }

  @Test
  void whatComesBehindTheHorizonDoesNotCount() {
    double[][] draws = {{90, 91, 120}, {90, 92, 130}};
    double[] seconds = {0, 180, 600};
    assertThat(LimitCrossing.probability(seconds, draws, 180, 100)).isZero();
    assertThat(LimitCrossing.probability(seconds, draws, 600, 100)).isEqualTo(1);
  }

  @Test
  void theTimeToTheLimitIsNeverWhereTooFewCoursesReachIt() {
    double[][] draws = {{90, 96}, {90, 97}, {90, 106}, {90, 110}};
    LimitForecast forecast = LimitCrossing.forecast(new double[] {0, 100}, draws, 100);
    assertThat(forecast.probability180()).isBetween(0.4, 0.6);
    assertThat(forecast.secondsP10().orElseThrow()).isCloseTo(50, within(1e-9));
    assertThat(forecast.secondsP90()).isEmpty();
  }

  // Two of four courses reach it: even odds, and an advisory that is raised at them tells a time.
  @Test
  void evenOddsHaveAMiddleTime() {
    double[] secondsAhead = {0, 60, 120, 180};
    double[][] draws = {{90, 96, 101, 104}, {90, 95, 99, 102}, {90, 92, 94, 95}, {90, 91, 92, 93}};
    LimitForecast toLimit = LimitCrossing.forecast(secondsAhead, draws, 98.5);
    assertThat(toLimit.probability180()).isBetween(0.5, 0.6);
    assertThat(toLimit.seconds()).isPresent();
    assertThat(toLimit.seconds().getAsDouble()).isBetween(60.0, 120.0);
    assertThat(toLimit.secondsP90()).isEmpty();
  }

  @Test
  void aChannelOverItsLimitIsThereNow() {
    double[][] draws = {{101, 96}, {101, 97}};
    LimitForecast forecast = LimitCrossing.forecast(new double[] {0, 100}, draws, 100);
    assertThat(forecast.probability180()).isEqualTo(1);
    assertThat(forecast.seconds()).hasValue(0);
  }

  // A band of half the right width holds the truth too seldom, one of twice the width too often;
  // the calibration must see both, and bring either back to what is right.
  @Test
  void bandsThatMissTooOftenAreStretchedAndIdleOnesShrunk() {
    assertThat(factorAfter(0.5)).isBetween(1.5, 2.5);
    assertThat(factorAfter(2.0)).isBetween(0.5, 0.75);
    assertThat(factorAfter(1.0)).isBetween(0.85, 1.2);
  }

  // What comes above says nothing about what comes below, nor half a minute about five.
  @Test
  void eachEdgeAndHorizonIsCalibratedByItself() {
    BandCalibration calibration = calibrated(1, 0.5, 1);
    double[][] near = stretched(calibration, 30);
    assertThat(near[1][1]).as("upper edge, half as far as it should be").isGreaterThan(1.5);
    assertThat(-near[0][1]).as("lower edge, as it should be").isBetween(0.8, 1.25);
    double[][] far = stretched(calibration, 300);
    assertThat(far[1][1]).as("upper edge far ahead").isBetween(0.8, 1.25);
  }

  // A start that fits other drives is only a start.
  @Test
  void aWrongStartIsUnlearnt() {
    BandCalibration calibration = new BandCalibration(BandStart.alongRoad(Store.CHARGE_COOLANT));
    assertThat(calibration.factor(300)).isLessThan(0.75);
    promise(calibration, 20_000, 1, 1, 1);
    assertThat(calibration.factor(300)).isBetween(0.85, 1.2);
  }

  /** Courses of one kelvin below and above a middle of 0. */
  private static double[][] stretched(BandCalibration calibration, double secondsAhead) {
    double[][] draws = {{0, -1}, {0, 1}};
    calibration.stretch(new double[] {0, secondsAhead}, new Courses(0, draws, 0));
    return draws;
  }

  private static double factorAfter(double width) {
    return calibrated(width, width, width).factor(60);
  }

  private static BandCalibration calibrated(double below, double aboveNear, double aboveFar) {
    BandCalibration calibration = new BandCalibration();
    promise(calibration, 8000, below, aboveNear, aboveFar);
    return calibration;
  }

  /** Bands about a standard normal truth, so many times as far as its 10 % and 90 % quantiles. */
  private static void promise(
      BandCalibration calibration, int seconds, double below, double aboveNear, double aboveFar) {
    Random random = new Random(11);
    double[] ahead = {0, 30, 60, 120, 300};
    for (int second = 1; second <= seconds; second++) {
      double[][] quantiles = new double[Fan.LEVELS.size()][ahead.length];
      for (int point = 1; point < ahead.length; point++) {
        // The stretch found so far acts on the bands, as it does on a drive.
        double above = ahead[point] < 300 ? aboveNear : aboveFar;
        double[][] factors = stretched(calibration, ahead[point]);
        quantiles[1][point] = 1.2816 * below * factors[0][1];
        quantiles[5][point] = 1.2816 * above * factors[1][1];
      }
      calibration.promise(second, new Fan(ahead, quantiles));
      calibration.check(second, random.nextGaussian());
    }
  }

  private static double width(Fan fan, int point) {
    return fan.celsius(5, point) - fan.celsius(1, point);
  }

  private static Courses randomCourses(Random random) {
    double[][] draws = new double[32][SECONDS.length];
    for (double[] draw : draws) {
      draw[0] = 80;
      double slope = random.nextGaussian();
      for (int point = 1; point < draw.length; point++) {
        draw[point] = 80 + slope * Math.sin(point / 9.0) * 10 + random.nextGaussian();
      }
    }
    return new Courses(80, draws, 80);
  }
}
