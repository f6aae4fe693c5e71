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
      Fan fan = Band.fan(SECONDS, 80, randomCourses(new Random(seed)));
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
      Fan fan = Band.fan(SECONDS, 80, randomCourses(new Random(seed)));
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

  @Test
  void aChannelOverItsLimitIsThereNow() {
    double[][] draws = {{101, 96}, {101, 97}};
    LimitForecast forecast = LimitCrossing.forecast(new double[] {0, 100}, draws, 100);
    assertThat(forecast.probability180()).isEqualTo(1);
    assertThat(forecast.seconds()).hasValue(0);
  }

  // A band of half the right width holds the truth too seldom, one of twice the width too often;
  // the calibration must see both.
  @Test
  void bandsThatMissTooOftenAreStretchedAndIdleOnesShrunk() {
    assertThat(factorAfter(0.5)).isGreaterThan(1.2);
    assertThat(factorAfter(2.0)).isLessThan(0.85);
    assertThat(factorAfter(1.0)).isBetween(0.85, 1.2);
  }

  private static double factorAfter(double width) {
    Random random = new Random(11);
    BandCalibration calibration = new BandCalibration();
    // The 10 % and 90 % quantiles of a standard normal lie at -1.2816 and 1.2816.
    double[][] quantiles = new double[Fan.LEVELS.size()][2];
    for (int second = 1; second <= 900; second++) {
      quantiles[1][1] = -1.2816 * width;
      quantiles[5][1] = 1.2816 * width;
      calibration.promise(second, new Fan(new double[] {0, 60}, quantiles));
      calibration.check(second, random.nextGaussian());
    }
    return calibration.factor();
  }

  private static double width(Fan fan, int point) {
    return fan.celsius(5, point) - fan.celsius(1, point);
  }

  private static double[][] randomCourses(Random random) {
    double[][] draws = new double[32][SECONDS.length];
    for (double[] draw : draws) {
      draw[0] = 80;
      double slope = random.nextGaussian();
      for (int point = 1; point < draw.length; point++) {
        draw[point] = 80 + slope * Math.sin(point / 9.0) * 10 + random.nextGaussian();
      }
    }
    return draws;
  }
}
