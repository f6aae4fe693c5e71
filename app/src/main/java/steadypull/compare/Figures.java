package steadypull.compare;

import java.util.Arrays;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;

/** Middles of values of which some are NaN: not heard. Pure functions. */
final class Figures {
  private Figures() {}

  private static DoubleStream heard(double[] values) {
    return Arrays.stream(values).filter(value -> !Double.isNaN(value));
  }

  static long count(double[] values) {
    return heard(values).count();
  }

  static OptionalDouble mean(double[] values) {
    return heard(values).average();
  }

  static OptionalDouble least(double[] values) {
    return heard(values).min();
  }

  static OptionalDouble most(double[] values) {
    return heard(values).max();
  }

  /** The middle one, or the mean of the two in the middle. */
  static OptionalDouble median(double[] values) {
    double[] sorted = heard(values).sorted().toArray();
    int half = sorted.length / 2;
    if (sorted.length == 0) {
      return OptionalDouble.empty();
    }
    return OptionalDouble.of(
        sorted.length % 2 == 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2);
  }

  /** The straight line's slope through values one a second, per second; empty under three. */
  static OptionalDouble slope(double[] values) {
    if (count(values) < 3) {
      return OptionalDouble.empty();
    }
    double count = count(values);
    double at = 0;
    double mean = mean(values).orElseThrow();
    for (int i = 0; i < values.length; i++) {
      at += Double.isNaN(values[i]) ? 0 : i / count;
    }
    double along = 0;
    double spread = 0;
    for (int i = 0; i < values.length; i++) {
      if (!Double.isNaN(values[i])) {
        along += (i - at) * (values[i] - mean);
        spread += (i - at) * (i - at);
      }
    }
    return OptionalDouble.of(along / spread);
  }
}
