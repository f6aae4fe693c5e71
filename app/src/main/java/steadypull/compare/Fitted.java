package steadypull.compare;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;

/**
 * The most probable unknowns, and draws of what they may as well be. One thread; the same seed
 * gives the same draws.
 */
final class Fitted {
  /** Readings go wrong together for about so many bins of five seconds (estimated). */
  private static final int BLOCK = 6;

  private static final double BELIEVED_FREEDOM = 8;

  private final Unknowns unknowns;
  private final List<Readings> readings;
  private final double[] deviations;
  private final double[] at;
  private final double[][] slopes;
  private final double[] residuals;
  private final CholeskyDecomposition normal;
  private final double scatter;

  Fitted(
      Unknowns unknowns,
      List<Readings> readings,
      double[] deviations,
      double[] at,
      double[][] slopes,
      double[] residuals) {
    this.unknowns = unknowns;
    this.readings = readings;
    this.deviations = deviations.clone();
    this.at = at;
    this.slopes = slopes;
    this.residuals = residuals;
    normal = new CholeskyDecomposition(normal(), 1e-9, 1e-14);
    scatter = scatter();
  }

  /** The most probable ones. Not to be written to. */
  double[] at() {
    return at;
  }

  Unknowns unknowns() {
    return unknowns;
  }

  /** Where a run's sensor stood at its onset, by the fit, degC. */
  double onset(int run, RunLoad load) {
    Side side = unknowns.side(run);
    double[] shown =
        unknowns
            .circuit()
            .shown(
                unknowns.joules(at, side),
                unknowns.watts(at, side),
                unknowns.own(at),
                load,
                unknowns.effects(at, run));
    return shown[Math.min(-load.firstSecond(), shown.length - 1)];
  }

  /** What each reading lies above what the model says, K, run after run. */
  double[] residuals() {
    return residuals;
  }

  /** What both sides share, in its own units. */
  double[] own() {
    return unknowns.own(at);
  }

  private RealMatrix normal() {
    double[][] normal = new double[at.length][at.length];
    for (int row = 0; row < slopes.length; row++) {
      double weight = 1 / (deviations[row] * deviations[row]);
      for (int i = 0; i < at.length; i++) {
        for (int j = 0; j < at.length; j++) {
          normal[i][j] += weight * slopes[row][i] * slopes[row][j];
        }
      }
    }
    for (int i = 0; i < at.length; i++) {
      double deviation = unknowns.priors().get(i).deviation();
      normal[i][i] += 1 / (deviation * deviation);
    }
    return MatrixUtils.createRealMatrix(normal);
  }

  /**
   * How much farther than believed the unknowns of days and runs lie from nothing, 1 or more
   * (Birge, The calculation of errors by the method of least squares, Phys. Rev. 40, 1932); a
   * belief of as many degrees of freedom keeps two runs from widening everything by chance.
   */
  private double scatter() {
    double squares = BELIEVED_FREEDOM;
    double freedom = BELIEVED_FREEDOM;
    for (int i = 0; i < at.length; i++) {
      if (unknowns.isOfDayOrRun(i)) {
        Prior prior = unknowns.priors().get(i);
        double far = (at[i] - prior.mean()) / prior.deviation();
        double learnt = 1 - variance(i) / (prior.deviation() * prior.deviation());
        squares += far * far;
        freedom += Math.clamp(learnt, 0.0, 1.0);
      }
    }
    return Math.sqrt(Math.max(1, squares / freedom));
  }

  private double variance(int unknown) {
    ArrayRealVector one = new ArrayRealVector(at.length);
    one.setEntry(unknown, 1);
    return normal.getSolver().solve(one).getEntry(unknown);
  }

  /**
   * As likely as the most probable ones: the residuals are dealt out anew in blocks, and what was
   * believed is drawn anew, days and runs with it; then the fit is repeated by its slopes
   * (bootstrap of blocks: Davison and Hinkley, Bootstrap Methods and their Application, 1997,
   * section 8.2, from memory; of the beliefs: a parametric one, since two or three runs to be drawn
   * from would say too little of the runs that might have been).
   */
  double[] draw(Random random) {
    double[] pull = new double[at.length];
    double[] errors = dealt(random);
    for (int row = 0; row < errors.length; row++) {
      double weight = errors[row] / (deviations[row] * deviations[row]);
      for (int i = 0; i < at.length; i++) {
        pull[i] += weight * slopes[row][i];
      }
    }
    for (int i = 0; i < at.length; i++) {
      double deviation = unknowns.priors().get(i).deviation();
      double widened = unknowns.isOfDayOrRun(i) ? scatter : 1;
      pull[i] += widened * random.nextGaussian() / deviation;
    }
    double[] moved = normal.getSolver().solve(new ArrayRealVector(pull)).toArray();
    for (int i = 0; i < moved.length; i++) {
      moved[i] += at[i];
    }
    return moved;
  }

  private double[] dealt(Random random) {
    double[] dealt = new double[residuals.length];
    int from = 0;
    for (Readings each : readings) {
      int size = each.size();
      double middle = Arrays.stream(residuals, from, from + size).average().orElse(0);
      for (int i = 0; i < size; i += BLOCK) {
        int begin = random.nextInt(Math.max(1, size));
        double sign = random.nextBoolean() ? 1 : -1;
        for (int k = 0; k < BLOCK && i + k < size; k++) {
          dealt[from + i + k] = sign * (residuals[from + (begin + k) % size] - middle);
        }
      }
      from += size;
    }
    return dealt;
  }
}
