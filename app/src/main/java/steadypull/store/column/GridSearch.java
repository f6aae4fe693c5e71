package steadypull.store.column;

import java.util.Arrays;
import java.util.Optional;

/**
 * Looks for the step of a grid: the greatest common divisor of the distances between values, by
 * Euclid's algorithm, with remainders below the roundings of the values taken for nothing.
 */
final class GridSearch {
  /** Roundings make differences of up to so many neighbouring doubles (estimated). */
  private static final double ROUNDINGS = 8;

  /** A step must be well above the roundings to mean anything (estimated). */
  private static final double CLARITY = 1 << 12;

  /** Where a grid begins, and its step. */
  record Found(double step, double offset) {}

  private GridSearch() {}

  static Optional<Found> step(double[] values, int count) {
    double[] sorted = Arrays.stream(values, 0, count).sorted().distinct().toArray();
    double least = sorted[0];
    double greatest = sorted[sorted.length - 1];
    double span = greatest - least;
    double nothing = ROUNDINGS * Math.ulp(Math.max(Math.abs(least), Math.abs(greatest)));
    if (sorted.length < 3 || !Double.isFinite(span)) {
      return Optional.empty();
    }
    double step = span;
    for (int i = 1; i < sorted.length; i++) {
      step = divisor(step, sorted[i] - sorted[i - 1], nothing);
      if (step < CLARITY * nothing) {
        return Optional.empty();
      }
      // The whole span tells the step more exactly than a single distance.
      step = span / Math.rint(span / step);
    }
    return Optional.of(new Found(step, least));
  }

  /** What is unclear in a distance becomes unclear in the remainder as often as it fits. */
  private static double divisor(double step, double distance, double nothing) {
    double greater = step;
    double smaller = distance;
    double unclearGreater = nothing;
    double unclear = nothing;
    while (smaller > unclear) {
      double times = Math.rint(greater / smaller);
      double rest = Math.abs(greater - times * smaller);
      double unclearRest = unclearGreater + times * unclear;
      greater = smaller;
      smaller = rest;
      unclearGreater = unclear;
      unclear = unclearRest;
    }
    return greater;
  }
}
