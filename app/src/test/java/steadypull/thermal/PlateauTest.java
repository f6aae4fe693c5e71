package steadypull.thermal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PlateauTest {
  private static final double[] SECONDS = HorizonGrid.secondsAhead();
  private static final int MINUTE = Arrays.binarySearch(SECONDS, 60);
  private static final int THREE_MINUTES = Arrays.binarySearch(SECONDS, 180);

  // Time to threshold t = tau ln((Tinf - T0) / (Tinf - Th)), tau 240 s, T0 98, Th 112 degC: the
  // table of first-order lag, closed form (any text on first-order systems). 112.5 to 114 degC lie
  // beyond the 600 s that a forecast reaches or where 1 K moves the time by minutes.
  @ParameterizedTest
  @CsvSource({"114, 499.1", "116, 361.0", "120, 242.8", "130, 138.1"})
  void theTimeToTheLimitIsThatOfTheClosedForm(double settles, double seconds) {
    double slope = (settles - 98) / 240;
    double[] course = new double[SECONDS.length];
    for (int point = 0; point < course.length; point++) {
      course[point] =
          new RiseCurve().value(SECONDS[point], new double[] {98, slope, -Math.log(240)});
    }
    // Linear between points 30 s apart: the chord of the bend costs a second at most.
    assertThat(LimitCrossing.first(SECONDS, course, 112).orElseThrow())
        .isCloseTo(seconds, within(1.0));
  }

  // The same table, heard in steps of 1 degC for four minutes before: what a sensor gives.
  @ParameterizedTest
  @CsvSource({"116, 361.0", "120, 242.8", "130, 138.1"})
  void theTimeToTheLimitIsFoundFromReadingsInWholeDegrees(double settles, double seconds) {
    Plateau plateau = new Plateau(unheld());
    hear(plateau, 240, s -> Math.rint(settles - (settles - 98) * Math.exp(-(s - 240) / 240)));
    LimitForecast forecast = LimitCrossing.forecast(SECONDS, courses(plateau), 112);
    assertThat(forecast.secondsP10().orElse(600)).isLessThanOrEqualTo(seconds);
    assertThat(forecast.secondsP90().orElse(600)).isGreaterThanOrEqualTo(Math.min(600, seconds));
    assertThat(forecast.seconds().orElse(600)).isCloseTo(seconds, within(0.3 * seconds));
  }

  @Test
  void aVisibleBendTellsThePlateau() {
    Plateau plateau = new Plateau(unheld());
    hear(plateau, 240, s -> Math.rint(110 - 40 * Math.exp(-s / 80)));
    assertThat(plateau.settled()).isCloseTo(110, within(2.0));
  }

  // Identifiability: on a straight rise the plateau may be near or far, and the band must say so.
  @Test
  void withoutABendThePlateauIsOpenAndTheBandIsWide() {
    Plateau straight = new Plateau(unheld());
    hear(straight, 90, s -> 70 + 0.15 * s);
    Plateau bent = new Plateau(unheld());
    hear(bent, 240, s -> 110 - 40 * Math.exp(-s / 80));
    assertThat(width(straight, THREE_MINUTES)).isGreaterThan(1.5 * width(bent, THREE_MINUTES));
  }

  @Test
  void noCourseOfTheMiddleIsSteeperThanTheReadings() {
    Plateau straight = new Plateau(unheld());
    hear(straight, 120, s -> Math.rint(70 + 0.15 * s));
    double[] middle = quantile(courses(straight), 0.5);
    assertThat(middle[MINUTE] - middle[0]).isBetween(0.5 * 0.15 * 60, 0.15 * 60 + 0.5);
    assertThat(middle[THREE_MINUTES] - middle[0]).isLessThan(0.15 * 180);
  }

  @Test
  void aSteadyTemperatureStays() {
    Plateau plateau = new Plateau(unheld());
    hear(plateau, 240, _ -> 88);
    assertThat(plateau.settled()).isCloseTo(88, within(0.3));
    assertThat(quantile(courses(plateau), 0.5)[THREE_MINUTES]).isCloseTo(88, within(0.5));
  }

  // One step of 1 degC is no rise: a difference of two readings would forecast 60 K a minute.
  @Test
  void oneStepOfARoundedReadingMovesNothing() {
    Plateau plateau = new Plateau(unheld());
    hear(plateau, 121, s -> s < 120.5 ? 88 : 89);
    assertThat(quantile(courses(plateau), 0.5)[MINUTE]).isCloseTo(88.5, within(1.0));
  }

  // The prior knows the thermostat: straight on at the pace of a warm-up lies every limit.
  @Test
  void aWarmUpEndsAtTheThermostat() {
    Plateau plateau = new Plateau(RiseNature.of(Store.ENGINE_COOLANT));
    hear(plateau, 300, s -> Math.rint(20 + 0.2 * s));
    double[] hottest = quantile(courses(plateau), 0.95);
    assertThat(hottest[SECONDS.length - 1]).isLessThan(105);
  }

  @Test
  void aClimbAboveTheThermostatIsNoWarmUp() {
    Plateau plateau = new Plateau(RiseNature.of(Store.ENGINE_COOLANT));
    hear(plateau, 120, s -> Math.rint(92 + 0.1 * s));
    assertThat(quantile(courses(plateau), 0.5)[THREE_MINUTES]).isGreaterThan(112);
  }

  @Test
  void twoLoadsInOneWindowAreToldApart() {
    Plateau plateau = new Plateau(unheld());
    hear(plateau, 300, s -> Math.rint(s < 150 ? 60 : 60 + 0.2 * (s - 150)));
    assertThat(quantile(courses(plateau), 0.5)[MINUTE]).isCloseTo(98, within(4.0));
  }

  @Test
  void afterALoadStepThereIsNothingToGoByForAWhile() {
    Plateau plateau = new Plateau(unheld());
    hear(plateau, 120, _ -> 70);
    plateau.restart(120);
    plateau.fit(121);
    assertThat(plateau.isFitted()).isFalse();
  }

  @Test
  void nothingIsFittedAcrossAGap() {
    Plateau plateau = new Plateau(unheld());
    hear(plateau, 120, _ -> 70);
    plateau.accept(200, 95);
    plateau.fit(200);
    assertThat(plateau.isFitted()).isFalse();
  }

  @Test
  void noisyReadingsOfARiseLeadWhereItLeads() {
    for (long seed = 1; seed <= 20; seed++) {
      Random random = new Random(seed);
      Plateau plateau = new Plateau(unheld());
      hear(
          plateau,
          200,
          s -> Math.rint(115 - 45 * Math.exp(-s / 100) + 0.7 * random.nextGaussian()));
      double truth = 115 - 45 * Math.exp(-(200 + 60) / 100.0);
      double[][] courses = courses(plateau);
      assertThat(truth)
          .as("seed %d", seed)
          .isBetween(quantile(courses, 0.05)[MINUTE], quantile(courses, 0.95)[MINUTE]);
    }
  }

  private static RiseNature unheld() {
    return new RiseNature(150, 0.8, 0.4, 1, OptionalDouble.empty(), 0);
  }

  private static void hear(Plateau plateau, int seconds, DoubleUnaryOperator celsius) {
    for (int second = 0; second <= seconds; second++) {
      plateau.accept(second, celsius.applyAsDouble(second));
      plateau.fit(second);
    }
  }

  private static double[][] courses(Plateau plateau) {
    return plateau.courses(SECONDS, plateau.celsius(), 1);
  }

  private static double width(Plateau plateau, int point) {
    double[][] courses = courses(plateau);
    return quantile(courses, 0.9)[point] - quantile(courses, 0.1)[point];
  }

  private static double[] quantile(double[][] courses, double level) {
    double[] quantiles = new double[SECONDS.length];
    for (int point = 0; point < quantiles.length; point++) {
      int at = point;
      double[] column = Arrays.stream(courses).mapToDouble(each -> each[at]).sorted().toArray();
      quantiles[point] = Band.quantile(column, level);
    }
    return quantiles;
  }
}
