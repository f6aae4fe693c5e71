package steadypull.drive;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.OptionalLong;
import steadypull.adapter.position.PositionReport;

/**
 * Judges by a receiver's own time whether a position still belongs to the moment at which it was
 * heard. What is held up on the way comes late and in bursts; at 25 m/s a second is 25 m of road.
 * The receiver's clock and the link's both run true, so the time from one to the other has a least
 * that stays: what exceeds it was held up. Where the least itself moves, nobody knows to which
 * moments positions belong. Pipeline thread only.
 */
final class FixTimes {
  /** What a receiver and its port take more at one time than at another (estimated). */
  private static final long MOST_LATE_NANOS = Duration.ofMillis(1500).toNanos();

  /** Quartz clocks differ by a millisecond in half a minute, not by that (our choice). */
  private static final long OUT_OF_PACE_NANOS = Duration.ofSeconds(2).toNanos();

  private static final long HALF_NANOS = Duration.ofSeconds(30).toNanos();

  /** Of so many fixes one or another came without delay (estimated). */
  private static final int ENOUGH = 20;

  /** What is to be thought of a position. */
  enum Verdict {
    /** It belongs to now, or its receiver tells no time. */
    TIMELY,
    /** It was held up on the way. */
    LATE,
    /** The receiver's clock and the link's do not keep pace. */
    OUT_OF_PACE
  }

  /**
   * How much later a fix was heard than it says, from an origin of its own.
   *
   * @param nanoTime when it was heard, on the link's clock
   */
  private record Delay(long nanoTime, long nanos) {}

  private final Deque<Delay> recent = new ArrayDeque<>();
  private final Deque<Delay> before = new ArrayDeque<>();

  /** Judges the next report. */
  Verdict judge(PositionReport.Fixed fix) {
    return fix.time().map(time -> judge(fix.nanoTime(), time)).orElse(Verdict.TIMELY);
  }

  private Verdict judge(long nanoTime, Instant time) {
    long own =
        Math.addExact(Math.multiplyExact(time.getEpochSecond(), 1_000_000_000L), time.getNano());
    Delay delay = new Delay(nanoTime, nanoTime - own);
    OptionalLong usual = least(recent);
    if (usual.isPresent() && delay.nanos < usual.getAsLong() - 5 * OUT_OF_PACE_NANOS) {
      recent.clear(); // one of both clocks was set, or slept
      before.clear();
    }
    recent.addLast(delay);
    pass(recent, before, nanoTime - HALF_NANOS);
    pass(before, new ArrayDeque<>(), nanoTime - 2 * HALF_NANOS);
    long least = least(recent).orElseThrow();
    OptionalLong leastBefore = before.size() < ENOUGH ? OptionalLong.empty() : least(before);
    if (leastBefore.isPresent() && Math.abs(least - leastBefore.getAsLong()) > OUT_OF_PACE_NANOS) {
      return Verdict.OUT_OF_PACE;
    }
    long usually = Math.min(least, leastBefore.orElse(least));
    return delay.nanos - usually > MOST_LATE_NANOS ? Verdict.LATE : Verdict.TIMELY;
  }

  private static void pass(Deque<Delay> from, Deque<Delay> to, long untilNanoTime) {
    while (!from.isEmpty() && from.getFirst().nanoTime < untilNanoTime) {
      to.addLast(from.removeFirst());
    }
  }

  private static OptionalLong least(Deque<Delay> delays) {
    return delays.stream().mapToLong(Delay::nanos).min();
  }
}
