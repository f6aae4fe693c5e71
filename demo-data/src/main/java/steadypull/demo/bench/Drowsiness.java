package steadypull.demo.bench;

import java.util.Optional;
import java.util.OptionalLong;

/**
 * Whether an adapter that hears nothing falls asleep: it warns a minute and two seconds before
 * (texts of the sheet of transports, section 4b), then sleeps until any byte comes.
 */
final class Drowsiness {
  /** What happens next. Order of time. */
  enum Stage {
    MINUTE_BEFORE(240_000_000_000L, "ACT ALERT"),
    SECONDS_BEFORE(298_000_000_000L, "LP ALERT"),
    ASLEEP(300_000_000_000L, "");

    private final long afterNanos;
    private final String text;

    Stage(long afterNanos, String text) {
      this.afterNanos = afterNanos;
      this.text = text;
    }

    /** What the adapter says, empty text for nothing. */
    String text() {
      return text;
    }
  }

  private final boolean isSleepy;
  private long lastHeard;
  private int passed;

  Drowsiness(boolean isSleepy) {
    this.isSleepy = isSleepy;
  }

  boolean isAsleep() {
    return passed == Stage.values().length;
  }

  /** A byte came. */
  void heard(long nanos) {
    lastHeard = nanos;
    passed = 0;
  }

  OptionalLong nextNanos() {
    return isSleepy && !isAsleep()
        ? OptionalLong.of(lastHeard + Stage.values()[passed].afterNanos)
        : OptionalLong.empty();
  }

  /** Takes the stage that is due by a moment. */
  Optional<Stage> take(long nanos) {
    OptionalLong next = nextNanos();
    if (next.isEmpty() || next.getAsLong() > nanos) {
      return Optional.empty();
    }
    passed++;
    return Optional.of(Stage.values()[passed - 1]);
  }
}
