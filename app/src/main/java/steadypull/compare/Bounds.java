package steadypull.compare;

import java.util.Optional;
import java.util.function.DoubleFunction;
import steadypull.thermal.Belief;

/**
 * What a side holds for ever under a limit, by bisection in each draw: the power at the common
 * speed and outside air, and the hottest outside air at the common power. Stateless.
 */
final class Bounds {
  /** Kept to the limit by the power that is held. */
  private static final double HEADROOM_KELVIN = 5;

  private static final double LEAST_SHARE = 0.1;

  /** Beyond this much more than the runs pulled nothing is believed. */
  private static final double MOST_SHARE = 1.5;

  private static final double COLDEST = -40;
  private static final double HOTTEST = 60;
  private static final int HALVINGS = 14;

  private Bounds() {}

  /** The greatest power that leaves 5 K, kW; empty if it is half as much more, or beyond. */
  static Optional<Belief> kilowatts(Draws draws, CommonLoad load, Side side, double limit) {
    double least = LEAST_SHARE * load.kilowatts();
    double most = MOST_SHARE * load.kilowatts();
    return under(
        most,
        draws.sought(
            under ->
                greatest(
                    least,
                    most,
                    kilowatts ->
                        under.with(load.at(kilowatts)).settles(side) <= limit - HEADROOM_KELVIN)));
  }

  /** The hottest outside air, degC, in which the power is held under the limit; empty above 60. */
  static Optional<Belief> outside(Draws draws, CommonLoad load, Side side, double limit) {
    return under(
        HOTTEST,
        draws.sought(
            under ->
                greatest(
                    COLDEST,
                    HOTTEST,
                    celsius -> under.with(load.in(celsius)).settles(side) <= limit)));
  }

  /** What is told only as "more than was tried" is not told. */
  private static Optional<Belief> under(double most, Optional<Belief> found) {
    return found.filter(belief -> belief.middle() < most);
  }

  private static double greatest(double least, double most, DoubleFunction<Boolean> holds) {
    double good = least;
    double bad = most;
    if (!holds.apply(least)) {
      return Double.NaN;
    }
    if (holds.apply(most)) {
      return most;
    }
    for (int i = 0; i < HALVINGS; i++) {
      double middle = (good + bad) / 2;
      if (holds.apply(middle)) {
        good = middle;
      } else {
        bad = middle;
      }
    }
    return (good + bad) / 2;
  }
}
