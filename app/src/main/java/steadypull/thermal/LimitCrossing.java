package steadypull.thermal;

import java.util.Arrays;
import java.util.OptionalDouble;

/** Finds when temperatures first meet a limit. Only finds; what follows is for others. */
final class LimitCrossing {
  private LimitCrossing() {}

  /**
   * Seconds until one course first meets the limit from below, by linear interpolation; 0 if it is
   * there already; empty if it never does on this grid.
   *
   * @param secondsAhead rising, the first is 0
   * @param celsius degC at those moments
   */
  static OptionalDouble first(double[] secondsAhead, double[] celsius, double limitCelsius) {
    if (celsius[0] >= limitCelsius) {
      return OptionalDouble.of(0);
    }
    for (int point = 1; point < celsius.length; point++) {
      if (celsius[point] >= limitCelsius) {
        double share = (limitCelsius - celsius[point - 1]) / (celsius[point] - celsius[point - 1]);
        return OptionalDouble.of(
            secondsAhead[point - 1] + share * (secondsAhead[point] - secondsAhead[point - 1]));
      }
    }
    return OptionalDouble.empty();
  }

  /** The time to the limit as a distribution over draws. */
  static LimitForecast forecast(double[] secondsAhead, double[][] draws, double limitCelsius) {
    double[] seconds = new double[draws.length];
    for (int draw = 0; draw < draws.length; draw++) {
      seconds[draw] =
          first(secondsAhead, draws[draw], limitCelsius).orElse(Double.POSITIVE_INFINITY);
    }
    Arrays.sort(seconds);
    double reached = probability(secondsAhead, draws, 600, limitCelsius);
    return new LimitForecast(
        limitCelsius,
        probability(secondsAhead, draws, 180, limitCelsius),
        reached,
        quantile(seconds, 0.50, reached),
        quantile(seconds, 0.10, reached),
        quantile(seconds, 0.25, reached),
        quantile(seconds, 0.75, reached),
        quantile(seconds, 0.90, reached));
  }

  /**
   * Share of courses whose highest temperature within the horizon meets the limit. Between the
   * highest of two neighbouring courses it is interpolated, so that one course more or less does
   * not decide.
   */
  static double probability(
      double[] secondsAhead, double[][] draws, double horizonSeconds, double limitCelsius) {
    double[] highest = new double[draws.length];
    for (int draw = 0; draw < draws.length; draw++) {
      highest[draw] = highest(secondsAhead, draws[draw], horizonSeconds);
    }
    Arrays.sort(highest);
    int cooler = 0;
    while (cooler < highest.length && highest[cooler] < limitCelsius) {
      cooler++;
    }
    if (cooler == 0 || cooler == highest.length) {
      return cooler == 0 ? 1 : 0;
    }
    double between = (limitCelsius - highest[cooler - 1]) / (highest[cooler] - highest[cooler - 1]);
    return 1 - (cooler - 0.5 + between) / highest.length;
  }

  private static double highest(double[] secondsAhead, double[] course, double horizonSeconds) {
    double highest = course[0];
    for (int point = 1; point < course.length && secondsAhead[point] <= horizonSeconds; point++) {
      highest = Math.max(highest, course[point]);
    }
    return highest;
  }

  /**
   * A quantile of the time. Between the last course that reaches the limit and the first that never
   * does nothing can be interpolated; there the last one's time is told as long as so many reach it
   * as the level says, so that even odds always have a middle time.
   */
  private static OptionalDouble quantile(double[] sortedSeconds, double level, double reached) {
    double seconds = Band.quantile(sortedSeconds, level);
    if (Double.isFinite(seconds)) {
      return OptionalDouble.of(seconds);
    }
    double before = sortedSeconds[Math.max(0, (int) (level * sortedSeconds.length - 0.5))];
    return reached >= level && Double.isFinite(before)
        ? OptionalDouble.of(before)
        : OptionalDouble.empty();
  }
}
