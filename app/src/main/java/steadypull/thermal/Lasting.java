package steadypull.thermal;

import java.util.OptionalDouble;

/** Since when something holds, or no longer does. Pipeline thread only. */
final class Lasting {
  private OptionalDouble since = OptionalDouble.empty();
  private OptionalDouble endedSince = OptionalDouble.empty();

  /** Takes a moment; times do not run backwards. */
  void note(double seconds, boolean holds) {
    if (holds) {
      since = OptionalDouble.of(since.orElse(seconds));
      endedSince = OptionalDouble.empty();
    } else {
      since = OptionalDouble.empty();
      endedSince = OptionalDouble.of(endedSince.orElse(seconds));
    }
  }

  /** The moment from which on it has held, seconds; empty if it does not. */
  OptionalDouble since() {
    return since;
  }

  /** Whether it holds. */
  boolean holds() {
    return since.isPresent();
  }

  /** Whether it has not held for so many seconds. */
  boolean isOverFor(double span, double seconds) {
    return endedSince.isPresent() && seconds - endedSince.getAsDouble() >= span;
  }

  void forget() {
    since = OptionalDouble.empty();
    endedSince = OptionalDouble.empty();
  }
}
