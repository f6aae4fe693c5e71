package steadypull.compare;

import java.util.ArrayList;
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
import org.hipparchus.optim.nonlinear.vector.leastsquares.LevenbergMarquardtOptimizer;
import org.hipparchus.util.Pair;

/**
 * Finds the unknowns that all runs of both sides together speak for, each with what was believed of
 * it before (maximum a posteriori by damped least squares: Marquardt, SIAM J. 11, 1963). One
 * thread; deterministic.
 */
final class JointFit {
  /**
   * Standard deviation of a mean of five readings, K: steps of one degree, which neighbours share,
   * and a store that is no single lump (estimated).
   */
  static final double READING_KELVIN = 0.6;

  /** A reading farther out counts for less (Huber, Robust Statistics, 1981). */
  private static final double FAR = 2.5;

  private static final double PROBE = 1e-4;
  private static final double CLOSE = 1e-5;
  private static final double[] BEGIN_ASIDE = {0, 0.2, -0.2, 0.4};
  private static final int MOST_STEPS = 400;

  private final Unknowns unknowns;
  private final List<RunLoad> loads;
  private final List<Readings> readings = new ArrayList<>();
  private final double[] deviations;
  private final int rows;

  JointFit(Unknowns unknowns, List<RunLoad> loads) {
    this.unknowns = unknowns;
    this.loads = loads;
    loads.forEach(load -> readings.add(Readings.of(load.shown())));
    rows = readings.stream().mapToInt(Readings::size).sum();
    deviations = new double[rows];
    Arrays.fill(deviations, READING_KELVIN);
  }

  /**
   * What was found, or empty if no step leads on, from wherever it begins: a thermostat has kinks
   * on which a descent may stick.
   */
  Optional<Fitted> fit() {
    for (double aside : BEGIN_ASIDE) {
      Optional<Fitted> fitted = fit(aside);
      if (fitted.isPresent()) {
        return fitted;
      }
    }
    return Optional.empty();
  }

  private Optional<Fitted> fit(double aside) {
    try {
      Arrays.fill(deviations, READING_KELVIN);
      double[] start =
          unknowns.priors().stream()
              .mapToDouble(prior -> prior.mean() + aside * prior.deviation())
              .toArray();
      double[] first = optimum(start);
      weigh(residuals(first));
      double[] at = optimum(first);
      return Optional.of(
          new Fitted(unknowns, readings, deviations, at, jacobian(at), residuals(at)));
    } catch (MathRuntimeException leadsNowhere) {
      // Another beginning is tried; after the last the comparison says that nothing can be told.
      return Optional.empty();
    }
  }

  private double[] optimum(double[] start) {
    return new LevenbergMarquardtOptimizer()
        .withCostRelativeTolerance(CLOSE)
        .withParameterRelativeTolerance(CLOSE)
        .optimize(
            LeastSquaresFactory.create(
                this::model,
                new ArrayRealVector(targets()),
                new ArrayRealVector(start),
                LeastSquaresFactory.evaluationChecker(new SimpleVectorValueChecker(CLOSE, CLOSE)),
                MOST_STEPS,
                MOST_STEPS))
        .getPoint()
        .toArray();
  }

  private void weigh(double[] residuals) {
    for (int row = 0; row < rows; row++) {
      double far = Math.abs(residuals[row]) / READING_KELVIN;
      deviations[row] = READING_KELVIN * Math.sqrt(Math.max(1, far / FAR));
    }
  }

  private double[] targets() {
    double[] targets = new double[rows + unknowns.size()];
    int row = 0;
    for (Readings each : readings) {
      for (double celsius : each.celsius()) {
        targets[row] = celsius / deviations[row];
        row++;
      }
    }
    for (Prior prior : unknowns.priors()) {
      targets[row++] = prior.mean() / prior.deviation();
    }
    return targets;
  }

  private Pair<RealVector, RealMatrix> model(RealVector point) {
    double[] at = point.toArray();
    double[] values = Arrays.copyOf(predicted(at), rows + at.length);
    double[][] slopes = Arrays.copyOf(jacobian(at), rows + at.length);
    for (int row = 0; row < rows; row++) {
      values[row] /= deviations[row];
      for (int column = 0; column < at.length; column++) {
        slopes[row][column] /= deviations[row];
      }
    }
    for (int i = 0; i < at.length; i++) {
      double deviation = unknowns.priors().get(i).deviation();
      values[rows + i] = at[i] / deviation;
      slopes[rows + i] = new double[at.length];
      slopes[rows + i][i] = 1 / deviation;
    }
    return new Pair<>(new ArrayRealVector(values, false), new Array2DRowRealMatrix(slopes, false));
  }

  private double[] residuals(double[] at) {
    double[] residuals = predicted(at);
    int row = 0;
    for (Readings each : readings) {
      for (double celsius : each.celsius()) {
        residuals[row] = celsius - residuals[row];
        row++;
      }
    }
    return residuals;
  }

  private double[] predicted(double[] at) {
    double[] predicted = new double[rows];
    int row = 0;
    for (int run = 0; run < loads.size(); run++) {
      readings.get(run).of(row, course(at, run), predicted);
      row += readings.get(run).size();
    }
    return predicted;
  }

  private double[] course(double[] at, int run) {
    Side side = unknowns.side(run);
    return unknowns
        .circuit()
        .shown(
            unknowns.joules(at, side),
            unknowns.watts(at, side),
            unknowns.own(at),
            loads.get(run),
            unknowns.effects(at, run));
  }

  /** Slopes of the predictions, a row for each reading, a column for each unknown. */
  private double[][] jacobian(double[] at) {
    double[][] slopes = new double[rows][at.length];
    int row = 0;
    for (int run = 0; run < loads.size(); run++) {
      Readings bins = readings.get(run);
      double[] middle = bins.of(0, course(at, run), new double[bins.size()]);
      for (int unknown = 0; unknown < at.length; unknown++) {
        if (unknowns.concerns(unknown, run)) {
          double probe = PROBE * unknowns.priors().get(unknown).deviation();
          double[] beside = at.clone();
          beside[unknown] += probe;
          double[] moved = bins.of(0, course(beside, run), new double[bins.size()]);
          for (int i = 0; i < moved.length; i++) {
            slopes[row + i][unknown] = (moved[i] - middle[i]) / probe;
          }
        }
      }
      row += bins.size();
    }
    return slopes;
  }
}
