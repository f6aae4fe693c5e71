package steadypull.thermal;

import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;
import java.util.stream.IntStream;

/**
 * Checks the bands of one channel against what came, and stretches or shrinks them until each edge
 * of the 80 % band is passed one time in ten (adaptive conformal inference: Gibbs and Candes,
 * Adaptive conformal inference under distribution shift, NeurIPS 2021, eq. 2), apart for what is
 * near and what is far ahead and for either edge: a sensor's steps make the near wrong, hills the
 * far; and what comes below says nothing about what comes above. Pipeline thread only.
 */
final class BandCalibration {
  /** Seconds ahead at which bands are checked; between them the factor is interpolated. */
  static final double[] HORIZONS = {30, 60, 120, 300};

  /** Logarithm of each horizon over the one before. */
  private static final double[] LOG_STEPS =
      IntStream.range(0, HORIZONS.length)
          .mapToDouble(each -> each == 0 ? 0 : Math.log(HORIZONS[each] / HORIZONS[each - 1]))
          .toArray();

  private static final double MISS_SHARE = 0.1;

  /**
   * Neighbouring forecasts share their fate: a miss lasts about as long as it is ahead, and each
   * such span moves the logarithm by so much at most. One surprise must not widen the bands of the
   * whole climb that follows (estimated).
   */
  private static final double MOVED_BY_ONE_MISS = 0.2;

  private static final double SMALLEST = 0.5;
  private static final double LARGEST = 2.5;

  private record Promise(double dueSeconds, double lowest, double highest) {}

  private final double[] below;
  private final double[] above;
  private final Deque<Promise>[] promises;

  /** Begins with bands as they are. */
  BandCalibration() {
    this(BandStart.asTheyAre());
  }

  /** Begins with what other drives have shown. */
  BandCalibration(BandStart start) {
    below = start.below();
    above = start.above();
    promises = queues();
  }

  @SuppressWarnings({
    "unchecked",
    "rawtypes"
  }) // an array of a generic type cannot be made otherwise
  private static Deque<Promise>[] queues() {
    Deque<Promise>[] queues = new Deque[HORIZONS.length];
    Arrays.setAll(queues, _ -> new ArrayDeque<>());
    return queues;
  }

  /** The factor by which a band is to be stretched so far ahead, both edges alike. */
  double factor(double secondsAhead) {
    return Math.sqrt(factor(below, secondsAhead) * factor(above, secondsAhead));
  }

  /** Stretches courses about their middles, in place. */
  void stretch(double[] secondsAhead, Courses courses) {
    double[] down = new double[secondsAhead.length];
    double[] up = new double[secondsAhead.length];
    for (int point = 1; point < secondsAhead.length; point++) {
      double place = place(secondsAhead[point]);
      down[point] = at(below, place);
      up[point] = at(above, place);
    }
    courses.stretch(down, up);
  }

  /** Notes what the fan of this moment says about later. */
  void promise(double seconds, Fan fan) {
    for (int each = 0; each < HORIZONS.length; each++) {
      promises[each].addLast(
          new Promise(
              seconds + HORIZONS[each],
              fan.at(Fan.LEVELS.indexOf(0.10), HORIZONS[each]),
              fan.at(Fan.LEVELS.indexOf(0.90), HORIZONS[each])));
    }
  }

  /** Holds the promises that are due against what came. */
  void check(double seconds, double celsius) {
    for (int each = 0; each < HORIZONS.length; each++) {
      while (!promises[each].isEmpty() && promises[each].getFirst().dueSeconds() <= seconds) {
        Promise due = promises[each].removeFirst();
        if (seconds - due.dueSeconds() <= 2) {
          below[each] = moved(below[each], celsius < due.lowest(), HORIZONS[each]);
          above[each] = moved(above[each], celsius > due.highest(), HORIZONS[each]);
        }
      }
    }
  }

  private static double moved(double logarithm, boolean isMissed, double horizon) {
    double rate = MOVED_BY_ONE_MISS / horizon;
    double moved = logarithm + rate * ((isMissed ? 1 : 0) - MISS_SHARE);
    return Math.clamp(moved, Math.log(SMALLEST), Math.log(LARGEST));
  }

  private static double factor(double[] logarithms, double secondsAhead) {
    return at(logarithms, place(secondsAhead));
  }

  /** Where a moment lies among the horizons, by its logarithm: 0 at the first, 1 at the second. */
  private static double place(double secondsAhead) {
    if (secondsAhead <= HORIZONS[0]) {
      return 0;
    }
    for (int each = 1; each < HORIZONS.length; each++) {
      if (secondsAhead <= HORIZONS[each]) {
        return each - 1 + Math.log(secondsAhead / HORIZONS[each - 1]) / LOG_STEPS[each];
      }
    }
    return HORIZONS.length - 1.0;
  }

  private static double at(double[] logarithms, double place) {
    int before = Math.min((int) place, HORIZONS.length - 2);
    return Math.exp(
        logarithms[before] + (place - before) * (logarithms[before + 1] - logarithms[before]));
  }
}
