package steadypull.compare;

import java.util.Locale;
import java.util.Optional;

/**
 * Where one record of an engine's speed lies on another: the lag at which they correlate best, to
 * parts of a second, and how wrong it may be. Immutable.
 */
final class SpeedFit {
  /** Less is not the same engine, or nothing changed (our choice). */
  private static final double LEAST_CORRELATION = 0.9;

  /** Above it two coefficients cannot be told apart. */
  private static final double PERFECT = 0.9999;

  private static final int APART_SECONDS = 8;
  private static final int LEAST_SECONDS = 60;

  /** Both must tell of the same stretch for so much of the shorter one. */
  private static final double LEAST_SHARE = 0.5;

  /** Steadier engine speeds than that hold no time, r/min (our choice). */
  private static final double LEAST_CHANGE_RPM = 60;

  /** Both read the same crankshaft; a roller's is computed from a ratio. */
  private static final double SAME_WITHIN = 0.1;

  /** Nineteen in twenty of a normal distribution; and residuals last some seconds (estimated). */
  private static final double TWO_SIGMAS = 1.96;

  private static final double RESIDUALS_LAST_SECONDS = 4;

  /** Both clocks stamp what arrives, not what was (estimated). */
  private static final double LEAST_ERROR_SECONDS = 0.2;

  private final double[] trip;
  private final double[] table;
  private final double lag;
  private final double best;
  private final double otherBest;
  private final int otherLag;

  SpeedFit(double[] trip, double[] table) {
    this.trip = trip.clone();
    this.table = table.clone();
    int first = -table.length;
    double[] all = new double[table.length + trip.length];
    int at = 0;
    for (int i = 0; i < all.length; i++) {
      all[i] = correlation(first + i);
      at = all[i] > all[at] ? i : at;
    }
    int other = -1;
    for (int i = 0; i < all.length; i++) {
      boolean isBetter = Math.abs(i - at) >= APART_SECONDS && (other < 0 || all[i] > all[other]);
      other = isBetter ? i : other;
    }
    lag = all.length == 0 ? 0 : top(first + at);
    best = all.length == 0 ? 0 : Math.max(all[at], correlation(lag));
    otherBest = other < 0 ? 0 : all[other];
    otherLag = first + Math.max(0, other);
  }

  /**
   * The top of the parabola through the five whole lags about the best one (least squares). Lags
   * between would be tried on values between, whose noise is less: they would look better.
   */
  private double top(int whole) {
    double[] y = new double[5];
    for (int i = 0; i < y.length; i++) {
      y[i] = correlation(whole + i - 2);
    }
    double bend = (2 * y[0] - y[1] - 2 * y[2] - y[3] + 2 * y[4]) / 14;
    double slope = (-2 * y[0] - y[1] + y[3] + 2 * y[4]) / 10;
    return bend < 0 ? whole + Math.clamp(-slope / (2 * bend), -1.0, 1.0) : whole;
  }

  /** The value of a column between two seconds; NaN outside and beside silence. */
  static double between(double[] column, double second) {
    int whole = (int) Math.floor(second);
    double part = second - whole;
    if (whole < 0 || whole >= column.length || (part > 0 && whole + 1 >= column.length)) {
      return Double.NaN;
    }
    return part == 0 ? column[whole] : (1 - part) * column[whole] + part * column[whole + 1];
  }

  /** Pearson's coefficient over the seconds that both tell; 0 where they hardly meet. */
  private double correlation(double tried) {
    return sums(tried).correlation();
  }

  private Sums sums(double tried) {
    Sums sums = new Sums();
    int from = Math.max(0, (int) Math.floor(tried));
    int to = Math.min(trip.length, (int) Math.ceil(tried) + table.length);
    for (int second = from; second < to; second++) {
      double other = between(table, second - tried);
      if (!Double.isNaN(trip[second]) && !Double.isNaN(other)) {
        sums.add(trip[second], other);
      }
    }
    int least = (int) Math.max(LEAST_SECONDS, LEAST_SHARE * Math.min(trip.length, table.length));
    return sums.count >= least ? sums : new Sums();
  }

  /** Sums of pairs. */
  private static final class Sums {
    private int count;
    private double one;
    private double other;
    private double oneSquared;
    private double otherSquared;
    private double product;

    void add(double first, double second) {
      count++;
      one += first;
      other += second;
      oneSquared += first * first;
      otherSquared += second * second;
      product += first * second;
    }

    double oneVariance() {
      return Math.max(0, oneSquared / count - (one / count) * (one / count));
    }

    double otherVariance() {
      return Math.max(0, otherSquared / count - (other / count) * (other / count));
    }

    double correlation() {
      if (count == 0 || oneVariance() < 1 || otherVariance() < 1) {
        return 0;
      }
      double covariance = product / count - one / count * (other / count);
      return covariance / Math.sqrt(oneVariance() * otherVariance());
    }
  }

  double lagSeconds() {
    return lag;
  }

  double correlation() {
    return best;
  }

  /** Residuals through the slope of the speed, for nineteen in twenty, s. */
  double errorSeconds() {
    double residuals = 0;
    double slopes = 0;
    Sums sums = sums(lag);
    double shift = (sums.one - sums.other) / Math.max(1, sums.count);
    for (int second = 1; second + 1 < trip.length; second++) {
      double other = between(table, second - lag);
      double slope = (trip[second + 1] - trip[second - 1]) / 2;
      if (!Double.isNaN(trip[second]) && !Double.isNaN(other) && !Double.isNaN(slope)) {
        double residual = trip[second] - other - shift;
        residuals += residual * residual / Math.max(1, sums.count);
        slopes += slope * slope;
      }
    }
    double error = TWO_SIGMAS * Math.sqrt(residuals * RESIDUALS_LAST_SECONDS / slopes);
    return Math.max(LEAST_ERROR_SECONDS, error);
  }

  /** Why it cannot be relied on, for a reader; empty if it can. */
  Optional<String> fault() {
    if (Figures.count(trip) < LEAST_SECONDS || Figures.count(table) < LEAST_SECONDS) {
      return Optional.of("less than a minute of it in one of them");
    }
    Sums sums = sums(lag);
    if (change(trip) < LEAST_CHANGE_RPM || change(table) < LEAST_CHANGE_RPM) {
      return Optional.of("one that hardly changes");
    }
    if (best < LEAST_CORRELATION) {
      return Optional.of(
          String.format(Locale.ROOT, "a correlation of %.2f at best, 0.9 is needed", best));
    }
    if (Math.abs(sums.one / sums.other - 1) > SAME_WITHIN) {
      return Optional.of(
          String.format(Locale.ROOT, "one that is %.2f times the other", sums.other / sums.one));
    }
    return !isClear(sums.count)
        ? Optional.of(
            String.format(
                Locale.ROOT,
                "two places where they fit nearly alike, %.0f s and %d s into the trip",
                lag,
                otherLag))
        : Optional.empty();
  }

  /**
   * Whether the best lag is better than the best one elsewhere for certain: coefficients after
   * Fisher's transformation, which scatter as 1 / sqrt(n - 3) (Fisher, Statistical Methods for
   * Research Workers, 1925, section 35; from memory), n counted in stretches of like residuals.
   */
  private boolean isClear(int count) {
    double pairs = count / RESIDUALS_LAST_SECONDS;
    double apart = fisher(best) - fisher(otherBest);
    return apart > TWO_SIGMAS * Math.sqrt(2 / (pairs - 3));
  }

  private static double fisher(double correlation) {
    double bounded = Math.clamp(correlation, -PERFECT, PERFECT);
    return 0.5 * Math.log((1 + bounded) / (1 - bounded));
  }

  private static double change(double[] speeds) {
    return Figures.most(speeds).orElse(0) - Figures.least(speeds).orElse(0);
  }
}
