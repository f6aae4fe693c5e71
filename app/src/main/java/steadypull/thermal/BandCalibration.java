package steadypull.thermal;

import java.util.ArrayDeque;
import java.util.Deque;

/**
 * Checks the bands of one channel against what came, and stretches or shrinks the model's own
 * uncertainty until the 80 % band holds the truth 80 % of the time (adaptive conformal inference:
 * Gibbs and Candes, Adaptive conformal inference under distribution shift, NeurIPS 2021, eq. 2).
 * Pipeline thread only.
 */
final class BandCalibration {
  private static final double HORIZON_SECONDS = 60;
  private static final double MISS_SHARE = 0.2;

  /**
   * Neighbouring forecasts share their fate: an hour of them is some sixty looks, and one surprise
   * must not widen the bands of the whole climb that follows (estimated).
   */
  private static final double RATE_PER_SECOND = 0.005;

  private static final double SMALLEST = 0.7;
  private static final double LARGEST = 1.8;

  private record Promise(double dueSeconds, double lowest, double highest) {}

  private final Deque<Promise> promises = new ArrayDeque<>();
  private double logarithm;

  /** The factor by which the store's own uncertainty is to be stretched. */
  double factor() {
    return Math.exp(logarithm);
  }

  /** Notes what the fan of this moment says about a minute later. */
  void promise(double seconds, Fan fan) {
    promises.addLast(
        new Promise(
            seconds + HORIZON_SECONDS,
            fan.at(Fan.LEVELS.indexOf(0.10), HORIZON_SECONDS),
            fan.at(Fan.LEVELS.indexOf(0.90), HORIZON_SECONDS)));
  }

  /** Holds the promises that are due against what came. */
  void check(double seconds, double celsius) {
    while (!promises.isEmpty() && promises.getFirst().dueSeconds() <= seconds) {
      Promise due = promises.removeFirst();
      if (seconds - due.dueSeconds() <= 2) {
        boolean missed = celsius < due.lowest() || celsius > due.highest();
        double moved = logarithm + RATE_PER_SECOND * ((missed ? 1 : 0) - MISS_SHARE);
        logarithm = Math.clamp(moved, Math.log(SMALLEST), Math.log(LARGEST));
      }
    }
  }
}
