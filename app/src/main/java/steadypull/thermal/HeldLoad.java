package steadypull.thermal;

import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;
import java.util.Optional;
import java.util.function.ToDoubleFunction;

/**
 * "The present load": the median of the last seconds, then a short lag. A gear change cuts torque
 * for a second or two and is not the load; a step onto a grade is, within about four seconds.
 * Pipeline thread only.
 */
final class HeldLoad {
  private static final int MEDIAN_OF = 5;
  private static final double LAG_SECONDS = 3;
  private static final double FORGET_AFTER_SECONDS = 15;

  private final Deque<Load> recent = new ArrayDeque<>();
  private Optional<Load> held = Optional.empty();
  private double lastSeconds = Double.NEGATIVE_INFINITY;

  /** Takes the load of one moment. */
  void accept(double seconds, Load load) {
    double step = seconds - lastSeconds;
    if (step > FORGET_AFTER_SECONDS) {
      recent.clear();
      held = Optional.empty();
    }
    recent.addLast(load);
    if (recent.size() > MEDIAN_OF) {
      recent.removeFirst();
    }
    double weight = -Math.expm1(-step / LAG_SECONDS);
    Load middle = middle(load);
    held = Optional.of(held.map(before -> between(before, middle, weight)).orElse(middle));
    lastSeconds = seconds;
  }

  /** The load that is held, or empty before the first. */
  Optional<Load> load() {
    return held;
  }

  private Load middle(Load latest) {
    return new Load(
        median(Load::kilowatts),
        median(Load::engineRpm),
        median(Load::metresPerSecond),
        median(Load::fuelKilowatts),
        median(Load::airKilogramsPerSecond),
        latest.outsideCelsius(),
        latest.outsideKilopascals());
  }

  private double median(ToDoubleFunction<Load> part) {
    double[] sorted = recent.stream().mapToDouble(part).toArray();
    Arrays.sort(sorted);
    return (sorted[(sorted.length - 1) / 2] + sorted[sorted.length / 2]) / 2;
  }

  private static Load between(Load from, Load to, double weight) {
    return new Load(
        mix(from.kilowatts(), to.kilowatts(), weight),
        mix(from.engineRpm(), to.engineRpm(), weight),
        mix(from.metresPerSecond(), to.metresPerSecond(), weight),
        mix(from.fuelKilowatts(), to.fuelKilowatts(), weight),
        mix(from.airKilogramsPerSecond(), to.airKilogramsPerSecond(), weight),
        to.outsideCelsius(),
        to.outsideKilopascals());
  }

  private static double mix(double from, double to, double weight) {
    return from + weight * (to - from);
  }
}
