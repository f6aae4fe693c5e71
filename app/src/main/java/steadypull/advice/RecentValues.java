package steadypull.advice;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.OptionalDouble;

/** A channel's values of the last minute, one a second. One thread. */
final class RecentValues {
  private static final long KEPT_MICROS = 62_000_000;
  private static final long MINUTE_MICROS = 60_000_000;
  private static final long HALF_MINUTE_MICROS = 30_000_000;

  private final Deque<Timed> values = new ArrayDeque<>();

  private record Timed(long timeMicros, double value) {}

  /** Takes a value; times rise. */
  void add(long timeMicros, double value) {
    values.addLast(new Timed(timeMicros, value));
    while (values.getFirst().timeMicros() < timeMicros - KEPT_MICROS) {
      values.removeFirst();
    }
  }

  /** The last value less that of a minute before; empty if either was not heard. */
  OptionalDouble risesInAMinute(long nowMicros) {
    return !isHeard(nowMicros)
            || values.getFirst().timeMicros() > nowMicros - MINUTE_MICROS
            || values.getFirst().timeMicros() < nowMicros - KEPT_MICROS
        ? OptionalDouble.empty()
        : OptionalDouble.of(values.getLast().value() - values.getFirst().value());
  }

  /** The highest value of the last half minute less the last one. */
  OptionalDouble fallsInHalfAMinute(long nowMicros) {
    return !isHeard(nowMicros)
        ? OptionalDouble.empty()
        : OptionalDouble.of(
            values.stream()
                    .filter(each -> each.timeMicros() >= nowMicros - HALF_MINUTE_MICROS)
                    .mapToDouble(Timed::value)
                    .max()
                    .orElseThrow()
                - values.getLast().value());
  }

  private boolean isHeard(long nowMicros) {
    return !values.isEmpty() && values.getLast().timeMicros() == nowMicros;
  }
}
