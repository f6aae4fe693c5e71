package steadypull.demo.bench;

import java.util.OptionalDouble;
import java.util.Random;

/** How long control units take to answer. The same seed gives the same times. */
final class AnswerTimes {
  private static final long QUICKEST_NANOS = 5_000_000;
  private static final int SPREAD_NANOS = 9_000_000; // P2 is 50 ms at most, ISO 15765-4
  private static final long K_LINE_NANOS = 25_000_000; // P2 is 25 to 50 ms, ISO 14230-4
  private static final long LATER_NANOS = 4_000_000;
  private static final long AT_ONCE_NANOS = 150_000;
  private static final int ENGINE = 0x7E0;
  private static final double NANOS_PER_MILLI = 1e6;

  private final OptionalDouble latencyMillis;
  private final boolean isKLine;
  private final Random random;
  private long last;

  AnswerTimes(BenchSettings settings) {
    latencyMillis = settings.vehicle().latencyMillis();
    isKLine = settings.vehicle().protocol().isKLine();
    random = new Random(settings.seed() * 31 + 7);
  }

  /** The next; control units after the engine's are later unless the time is fixed. */
  long next(ControlUnit unit) {
    if (latencyMillis.isPresent()) {
      return Math.round(latencyMillis.getAsDouble() * NANOS_PER_MILLI);
    }
    long drawn = QUICKEST_NANOS + random.nextInt(SPREAD_NANOS);
    long slow = isKLine ? K_LINE_NANOS : 0;
    return slow + (unit.requestAddress() == ENGINE ? drawn : drawn + LATER_NANOS);
  }

  /** The next where all answer at once: every control unit just after the one before. */
  long nextAtOnce(ControlUnit unit) {
    last = unit.requestAddress() == ENGINE ? next(unit) : last + AT_ONCE_NANOS;
    return last;
  }
}
