package steadypull.thermal;

import java.util.ArrayDeque;
import java.util.Deque;

/**
 * How far a channel's physical model is to be believed against the plateau that its own readings
 * lead to: by how well the medians of both foretold the last minutes. A model with its inputs must
 * fail clearly before it is doubted; one without them has to prove itself. Pipeline thread only.
 *
 * <p>Weights fall with the square of the mean squared error (as of combined forecasts: Bates and
 * Granger, The combination of forecasts, Operational Research Quarterly 20, 1969, weight them by
 * its inverse; squared here, since both err together and the better one should lead).
 */
final class ModelTrust {
  static final double[] HORIZONS = {30, 60};

  /** No course is asked for anything later, s. */
  static final double FARTHEST = HORIZONS[HORIZONS.length - 1];

  /** What happened a minute ago counts half as much (estimated). */
  private static final double MEMORY_SECONDS = 60;

  /** Errors below this are steps of 1 degC and lag, not the model's, K. */
  private static final double STEP_KELVIN = 1;

  /** Ratio of squared errors at which both count alike; likewise with all inputs (estimated). */
  private static final double EVEN_WITHOUT_INPUTS = 1;

  private static final double EVEN_WITH_INPUTS = 8;

  /** A smaller share of the plateau is left out. */
  private static final double LEAST_SHARE = 0.05;

  private static final double WANDER_MEMORY_SECONDS = 300;

  /** No minute is so even that less should be believed (estimated). */
  private static final double LEAST_WANDER_KELVIN = 0.3;

  /** Mean absolute deviation of a normal distribution against its standard deviation. */
  private static final double MEAN_ABSOLUTE_OF_NORMAL = 0.798;

  private record Promise(double dueSeconds, double horizon, double physical, double plateau) {}

  private final Deque<Promise> promises = new ArrayDeque<>();
  private double physicalSquares = STEP_KELVIN * STEP_KELVIN;
  private double plateauSquares = STEP_KELVIN * STEP_KELVIN;
  private double wanderKelvin;

  /**
   * Trust at the start of a drive.
   *
   * @param wanderKelvin how far plateaus are usually wrong a minute later
   */
  ModelTrust(double wanderKelvin) {
    this.wanderKelvin = wanderKelvin;
  }

  /** Weight of the plateau, 0 to 1; the physical model has the rest. */
  double plateauShare(boolean hasInputs) {
    double ratio = physicalSquares / plateauSquares;
    double even = hasInputs ? EVEN_WITH_INPUTS : EVEN_WITHOUT_INPUTS;
    double share = ratio * ratio / (ratio * ratio + even * even);
    return share < LEAST_SHARE ? 0 : share;
  }

  /** Standard deviation of what a plateau misses within a minute, K. */
  double wanderKelvin() {
    return Math.max(LEAST_WANDER_KELVIN, wanderKelvin);
  }

  /** Notes the medians of this moment. */
  void promise(double seconds, Median physical, Median plateau) {
    for (double horizon : HORIZONS) {
      promises.addLast(
          new Promise(seconds + horizon, horizon, physical.at(horizon), plateau.at(horizon)));
    }
  }

  /** A course that can be asked. */
  interface Median {
    /** Temperature after some seconds, degC. */
    double at(double seconds);
  }

  /** Holds what is due against what came. */
  void check(double seconds, double celsius) {
    promises.removeIf(each -> isDone(each, seconds, celsius));
  }

  private boolean isDone(Promise promise, double seconds, double celsius) {
    if (promise.dueSeconds() > seconds) {
      return false;
    }
    if (seconds - promise.dueSeconds() <= 2) {
      physicalSquares = moved(physicalSquares, celsius - promise.physical());
      plateauSquares = moved(plateauSquares, celsius - promise.plateau());
      if (promise.horizon() == HORIZONS[1]) {
        double missed = Math.abs(celsius - promise.plateau()) / MEAN_ABSOLUTE_OF_NORMAL;
        wanderKelvin += (missed - wanderKelvin) / WANDER_MEMORY_SECONDS;
      }
    }
    return true;
  }

  private static double moved(double squares, double missed) {
    double now = missed * missed + STEP_KELVIN * STEP_KELVIN;
    return squares + (now - squares) / (MEMORY_SECONDS * HORIZONS.length);
  }

  /** The load has changed: old promises were made under another, and neither is better now. */
  void restart() {
    promises.clear();
    physicalSquares = STEP_KELVIN * STEP_KELVIN;
    plateauSquares = STEP_KELVIN * STEP_KELVIN;
  }
}
