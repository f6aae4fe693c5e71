package steadypull.compare;

import java.util.Arrays;
import org.hipparchus.distribution.continuous.TDistribution;
import steadypull.thermal.Belief;

/**
 * The mean of a figure over runs, with the interval that holds it nine times in ten: the scatter of
 * the runs by Student's t, and beside it what a single reading is sure of (JCGM 100:2008, 4.2, 4.3
 * and G.3). Stateless.
 */
final class MeanOfRuns {
  private static final double NORMAL_95 = 1.6449;

  private MeanOfRuns() {}

  /**
   * Of one run or more.
   *
   * @param values a figure of each run
   * @param readingDeviation standard deviation of one of them by its readings alone, 0 or more
   * @param aloneShare standard deviation between runs that is believed of one run alone, as a share
   *     of its figure
   */
  static Belief of(double[] values, double readingDeviation, double aloneShare) {
    double mean = Arrays.stream(values).average().orElseThrow();
    double reading = NORMAL_95 * readingDeviation / Math.sqrt(values.length);
    double between =
        values.length > 1 ? scatter(values, mean) : NORMAL_95 * Math.abs(mean) * aloneShare;
    double half = Math.hypot(reading, between);
    return new Belief(mean - half, mean, mean + half);
  }

  private static double scatter(double[] values, double mean) {
    int free = values.length - 1;
    double squares = Arrays.stream(values).map(each -> (each - mean) * (each - mean)).sum();
    double deviation = Math.sqrt(squares / free / values.length);
    return new TDistribution(free).inverseCumulativeProbability(0.95) * deviation;
  }
}
