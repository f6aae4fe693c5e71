package steadypull.thermal;

import java.util.Random;
import org.hipparchus.distribution.continuous.NormalDistribution;

/**
 * Standard normal draws, the same in every run: a Latin hypercube (McKay, Beckman and Conover, A
 * comparison of three methods for selecting values of input variables, Technometrics 21, 1979), so
 * that few draws cover every direction evenly. Immutable.
 */
final class DrawSet {
  private static final long SEED = 20_011;

  private final double[][] draws;

  /**
   * Makes a set.
   *
   * @param count number of draws, 2 or more
   * @param dimensions numbers in each draw
   */
  DrawSet(int count, int dimensions) {
    Random random = new Random(SEED);
    draws = new double[count][dimensions];
    for (int dimension = 0; dimension < dimensions; dimension++) {
      double[] column = shuffled(evenNormals(count), random);
      for (int draw = 0; draw < count; draw++) {
        draws[draw][dimension] = column[draw];
      }
    }
  }

  int count() {
    return draws.length;
  }

  /** One number of one draw. */
  double at(int draw, int dimension) {
    return draws[draw][dimension];
  }

  private static double[] evenNormals(int count) {
    NormalDistribution normal = new NormalDistribution();
    double[] values = new double[count];
    double squares = 0;
    for (int i = 0; i < count; i++) {
      values[i] = normal.inverseCumulativeProbability((i + 0.5) / count);
      squares += values[i] * values[i];
    }
    double scale = Math.sqrt(count / squares);
    for (int i = 0; i < count; i++) {
      values[i] *= scale;
    }
    return values;
  }

  private static double[] shuffled(double[] values, Random random) {
    for (int i = values.length - 1; i > 0; i--) {
      int other = random.nextInt(i + 1);
      double kept = values[i];
      values[i] = values[other];
      values[other] = kept;
    }
    return values;
  }
}
