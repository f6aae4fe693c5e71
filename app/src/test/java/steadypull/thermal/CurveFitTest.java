package steadypull.thermal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The fitter against certified fits: NIST Statistical Reference Datasets, nonlinear regression,
 * Misra1a and BoxBOD (NIST/ITL Statistical Engineering Division, public domain), from both starts
 * given there. NIST judges by matching digits; six are asked for, the tolerance of a good
 * double-precision fit.
 */
class CurveFitTest {
  private static final Percentage SIX_DIGITS = Percentage.withPercentage(1e-4);

  private static final double[] VOLUME = {
    10.07, 14.73, 17.94, 23.93, 29.61, 35.18, 40.02, 44.82, 50.76, 55.05, 61.01, 66.40, 75.47, 81.78
  };
  private static final double[] PRESSURE = {
    77.6, 114.9, 141.1, 190.8, 239.9, 289.0, 332.8, 378.4, 434.8, 477.3, 536.8, 593.1, 689.1, 760.0
  };
  private static final double[] OXYGEN_DEMAND = {109, 149, 149, 191, 213, 224};
  private static final double[] DAYS = {1, 2, 3, 5, 7, 10};

  /** y = b1 (1 - exp(-b2 x)), as NIST prints it. */
  private static final CurveFit.Curve PLATEAU =
      new CurveFit.Curve() {
        @Override
        public double value(double x, double[] b) {
          return b[0] * -Math.expm1(-b[1] * x);
        }

        @Override
        public double[] slopes(double x, double[] b) {
          return new double[] {-Math.expm1(-b[1] * x), b[0] * x * Math.exp(-b[1] * x)};
        }
      };

  /** The product's own curve from a known level 0: b1 = slope / k, b2 = k. */
  private static final CurveFit.Curve RISE_FROM_ZERO =
      new CurveFit.Curve() {
        private final RiseCurve rise = new RiseCurve();

        @Override
        public double value(double x, double[] p) {
          return rise.value(x, new double[] {0, p[0], p[1]});
        }

        @Override
        public double[] slopes(double x, double[] p) {
          double[] all = rise.slopes(x, new double[] {0, p[0], p[1]});
          return new double[] {all[RiseCurve.SLOPE], all[RiseCurve.LOG_RATE]};
        }
      };

  @ParameterizedTest
  @CsvSource({"500, 0.0001", "250, 0.0005"})
  void misra1aIsFittedAsCertified(double b1, double b2) {
    CurveFit.Found found = fit(PLATEAU, PRESSURE, VOLUME, b1, b2);
    assertThat(found.parameters()[0]).isCloseTo(2.3894212918E+02, SIX_DIGITS);
    assertThat(found.parameters()[1]).isCloseTo(5.5015643181E-04, SIX_DIGITS);
    assertThat(found.scatter()).isCloseTo(1.0187876330E-01, SIX_DIGITS);
    assertThat(deviation(found, 0)).isCloseTo(2.7070075241E+00, SIX_DIGITS);
    assertThat(deviation(found, 1)).isCloseTo(7.2668688436E-06, SIX_DIGITS);
  }

  // From the first start plain Gauss-Newton diverges: this is the test of the damping.
  @ParameterizedTest
  @CsvSource({"1, 1", "100, 0.75"})
  void boxBodIsFittedAsCertified(double b1, double b2) {
    CurveFit.Found found = fit(PLATEAU, DAYS, OXYGEN_DEMAND, b1, b2);
    assertThat(found.parameters()[0]).isCloseTo(2.1380940889E+02, SIX_DIGITS);
    assertThat(found.parameters()[1]).isCloseTo(5.4723748542E-01, SIX_DIGITS);
    assertThat(found.scatter()).isCloseTo(1.7088072423E+01, SIX_DIGITS);
    assertThat(deviation(found, 0)).isCloseTo(1.2354515176E+01, SIX_DIGITS);
    assertThat(deviation(found, 1)).isCloseTo(1.0455993237E-01, SIX_DIGITS);
  }

  @ParameterizedTest
  @CsvSource({"500, 0.0001", "250, 0.0005"})
  void theRiseCurveFitsMisra1aAsCertified(double b1, double b2) {
    expectCertified(
        fit(RISE_FROM_ZERO, PRESSURE, VOLUME, b1 * b2, Math.log(b2)),
        new double[] {2.3894212918E+02, 5.5015643181E-04},
        new double[] {2.7070075241E+00, 7.2668688436E-06});
  }

  @ParameterizedTest
  @CsvSource({"1, 1", "100, 0.75"})
  void theRiseCurveFitsBoxBodAsCertified(double b1, double b2) {
    expectCertified(
        fit(RISE_FROM_ZERO, DAYS, OXYGEN_DEMAND, b1 * b2, Math.log(b2)),
        new double[] {2.1380940889E+02, 5.4723748542E-01},
        new double[] {1.2354515176E+01, 1.0455993237E-01});
  }

  /** Linearised deviations do not depend on how a curve is parametrised: b1 = slope / k, b2 = k. */
  private static void expectCertified(
      CurveFit.Found found, double[] certified, double[] certifiedDeviations) {
    double rate = Math.exp(found.parameters()[1]);
    double plateau = found.parameters()[0] / rate;
    double[][] covariance = found.covariance();
    double variance =
        covariance[0][0] / (rate * rate)
            - 2 * plateau / rate * covariance[0][1]
            + plateau * plateau * covariance[1][1];
    assertThat(plateau).isCloseTo(certified[0], SIX_DIGITS);
    assertThat(rate).isCloseTo(certified[1], SIX_DIGITS);
    assertThat(found.scatter() * Math.sqrt(variance)).isCloseTo(certifiedDeviations[0], SIX_DIGITS);
    assertThat(rate * deviation(found, 1)).isCloseTo(certifiedDeviations[1], SIX_DIGITS);
  }

  // Straight line y = 3 + 0.25 x at x = 0..9: slope 0.25, intercept 3, residual 0 (exact).
  @Test
  void aStraightLineIsTheLimitOfTheRise() {
    List<CurveFit.Point> line =
        IntStream.range(0, 10).mapToObj(x -> new CurveFit.Point(x, 3 + 0.25 * x, 1)).toList();
    List<CurveFit.Belief> slow = List.of(new CurveFit.Belief(2, Math.log(1e-9), 1e-3));
    CurveFit.Found found =
        CurveFit.fit(new RiseCurve(), line, slow, new double[] {0, 0, -10}, CurveFit.EXACT)
            .orElseThrow();
    assertThat(found.parameters()[RiseCurve.LEVEL]).isCloseTo(3, within(1e-6));
    assertThat(found.parameters()[RiseCurve.SLOPE]).isCloseTo(0.25, within(1e-6));
    assertThat(found.scatter()).isLessThan(1e-6);
  }

  // A belief and a point of equal weight meet half way: the mean of two normal distributions.
  @Test
  void aBeliefWeighsAsMuchAsItsDeviationSays() {
    CurveFit.Curve constant =
        new CurveFit.Curve() {
          @Override
          public double value(double x, double[] parameters) {
            return parameters[0];
          }

          @Override
          public double[] slopes(double x, double[] parameters) {
            return new double[] {1};
          }
        };
    CurveFit.Found found =
        CurveFit.fit(
                constant,
                List.of(new CurveFit.Point(0, 10, 2)),
                List.of(new CurveFit.Belief(0, 20, 2)),
                new double[] {0},
                CurveFit.EXACT)
            .orElseThrow();
    assertThat(found.parameters()[0]).isCloseTo(15, within(1e-9));
    assertThat(found.covariance()[0][0]).isCloseTo(2, within(1e-9));
  }

  // A derivative that does not belong to its curve makes fits slow or wrong without a sign of it.
  @ParameterizedTest
  @CsvSource({"-180, 0.1, -3", "-60, 0.2, -5", "30, -0.1, -6", "-0.001, 0.3, -9", "600, 0.05, -7"})
  void slopesOfTheRiseAreThoseOfItsValues(double seconds, double slope, double logRate) {
    RiseCurve rise = new RiseCurve();
    double[] at = {90, slope, logRate};
    for (int parameter = 0; parameter < at.length; parameter++) {
      double[] up = at.clone();
      double[] down = at.clone();
      up[parameter] += 1e-5;
      down[parameter] -= 1e-5;
      double expected = (rise.value(seconds, up) - rise.value(seconds, down)) / 2e-5;
      assertThat(rise.slopes(seconds, at)[parameter])
          .isCloseTo(expected, within(1e-5 * Math.max(1, Math.abs(expected))));
    }
  }

  private static CurveFit.Found fit(CurveFit.Curve curve, double[] x, double[] y, double... start) {
    List<CurveFit.Point> points = new ArrayList<>();
    for (int i = 0; i < x.length; i++) {
      points.add(new CurveFit.Point(x[i], y[i], 1));
    }
    return CurveFit.fit(curve, points, List.of(), start, CurveFit.EXACT).orElseThrow();
  }

  private static double deviation(CurveFit.Found found, int parameter) {
    return found.scatter() * Math.sqrt(found.covariance()[parameter][parameter]);
  }

  // A rise that was over long ago, all of it before the second average: at the rate that explains
  // it the curve has slopes of 1e13, and what numbers in memory make of them is no covariance.
  @Test
  void aFitWhoseCovarianceIsNoneIsNotGiven() {
    double[] celsius = {
      556, 601, 608, 603, 602, 599, 599, 603, 606, 608, 605, 600, 597, 599, 600, 595, 596, 598, 595,
      596, 593, 591, 591
    };
    List<CurveFit.Point> points = new ArrayList<>();
    for (int i = 0; i < celsius.length; i++) {
      points.add(new CurveFit.Point(5 * (i - 22) - 1.3, celsius[i], 8));
    }
    List<CurveFit.Belief> beliefs =
        List.of(
            new CurveFit.Belief(RiseCurve.SLOPE, 0, 5),
            new CurveFit.Belief(RiseCurve.LOG_RATE, -Math.log(20), 0.8));
    double[] start = {591, 0, -Math.log(20)};
    assertThat(CurveFit.fit(new RiseCurve(), points, beliefs, start, 1e-6)).isEmpty();
  }
}
