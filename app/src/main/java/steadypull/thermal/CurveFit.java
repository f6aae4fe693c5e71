package steadypull.thermal;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.hipparchus.exception.MathRuntimeException;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.hipparchus.optim.SimpleVectorValueChecker;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresFactory;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresOptimizer.Optimum;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LevenbergMarquardtOptimizer;
import org.hipparchus.util.Pair;

/**
 * Damped least squares: the parameters of a curve that weighted points and earlier beliefs speak
 * for, with their covariance (Marquardt, An algorithm for least-squares estimation of nonlinear
 * parameters, SIAM J. 11, 1963; covariance by linearisation, Seber and Wild, Nonlinear Regression,
 * 1989, section 2.1). Stateless.
 */
final class CurveFit {
  private static final int MOST_STEPS = 200;
  private static final double SINGULAR = 1e-14;

  /** As near as numbers in memory allow. */
  static final double EXACT = 1e-13;

  private CurveFit() {}

  /** A curve with parameters. */
  interface Curve {
    /** Height at a place. */
    double value(double x, double[] parameters);

    /** Partial derivatives of the height by each parameter. */
    double[] slopes(double x, double[] parameters);
  }

  /**
   * A point that the curve should pass.
   *
   * @param deviation standard deviation of y, above 0
   */
  record Point(double x, double y, double deviation) {}

  /**
   * What is believed of one parameter before any point.
   *
   * @param parameter its index
   * @param deviation standard deviation, above 0
   */
  record Belief(int parameter, double mean, double deviation) {}

  /** What was found. Its arrays are not to be written to. */
  static final class Found {
    private final double[] parameters;
    private final double[][] covariance;
    private final double scatter;

    private Found(double[] parameters, double[][] covariance, double scatter) {
      this.parameters = parameters;
      this.covariance = covariance;
      this.scatter = scatter;
    }

    /** Whether every variance is one; where numbers in memory do not do, some are not. */
    private boolean isSound() {
      for (int i = 0; i < covariance.length; i++) {
        if (!(covariance[i][i] > 0) || !Double.isFinite(covariance[i][i])) {
          return false;
        }
      }
      return true;
    }

    /** The most probable parameters. */
    double[] parameters() {
      return parameters;
    }

    /** Covariance of the parameters, if the deviations of the points are right. */
    double[][] covariance() {
      return covariance;
    }

    /** Residual standard deviation in units of the points' own; 1 if those are right. */
    double scatter() {
      return scatter;
    }
  }

  /**
   * Fits, or is empty if no step leads on (as with points that contradict every curve) or the
   * points do not decide how sure the parameters are.
   *
   * @param start where to begin, one number per parameter
   * @param close relative change of a step at which the fit is taken as done, above 0
   */
  static Optional<Found> fit(
      Curve curve, List<Point> points, List<Belief> beliefs, double[] start, double close) {
    try {
      Optimum optimum =
          new LevenbergMarquardtOptimizer()
              .withCostRelativeTolerance(close)
              .withParameterRelativeTolerance(close)
              .optimize(
                  LeastSquaresFactory.create(
                      at -> rows(curve, points, beliefs, at),
                      targets(points, beliefs),
                      new ArrayRealVector(start),
                      LeastSquaresFactory.evaluationChecker(
                          new SimpleVectorValueChecker(close, close)),
                      MOST_STEPS,
                      MOST_STEPS));
      return Optional.of(found(optimum, points.size(), beliefs.size())).filter(Found::isSound);
    } catch (MathRuntimeException leadsNowhere) {
      // The caller goes on with what it knew before, or without; a fit is tried again soon.
      return Optional.empty();
    }
  }

  private static Found found(Optimum optimum, int points, int beliefs) {
    double[] residuals = Arrays.copyOf(optimum.getResiduals().toArray(), points);
    double squares = Arrays.stream(residuals).map(each -> each * each).sum();
    int free = Math.max(1, points + beliefs - optimum.getPoint().getDimension());
    return new Found(
        optimum.getPoint().toArray(),
        optimum.getCovariances(SINGULAR).getData(),
        Math.sqrt(squares / free));
  }

  private static RealVector targets(List<Point> points, List<Belief> beliefs) {
    double[] targets = new double[points.size() + beliefs.size()];
    int row = 0;
    for (Point point : points) {
      targets[row++] = point.y() / point.deviation();
    }
    for (Belief belief : beliefs) {
      targets[row++] = belief.mean() / belief.deviation();
    }
    return new ArrayRealVector(targets, false);
  }

  private static Pair<RealVector, RealMatrix> rows(
      Curve curve, List<Point> points, List<Belief> beliefs, RealVector at) {
    double[] parameters = at.toArray();
    double[] values = new double[points.size() + beliefs.size()];
    double[][] slopes = new double[values.length][];
    int row = 0;
    for (Point point : points) {
      values[row] = curve.value(point.x(), parameters) / point.deviation();
      double[] slope = curve.slopes(point.x(), parameters);
      for (int i = 0; i < slope.length; i++) {
        slope[i] /= point.deviation();
      }
      slopes[row++] = slope;
    }
    for (Belief belief : beliefs) {
      values[row] = parameters[belief.parameter()] / belief.deviation();
      slopes[row] = new double[parameters.length];
      slopes[row++][belief.parameter()] = 1 / belief.deviation();
    }
    return new Pair<>(new ArrayRealVector(values, false), new Array2DRowRealMatrix(slopes, false));
  }
}
