package steadypull.adapter.polling;

import java.time.Duration;

/** A target with its due time, the length of its answer and its record of misses. */
final class PollItem {
  private static final int MISSES_BEFORE_DOUBT = 5;
  private static final long DOUBTFUL_NANOS = Duration.ofSeconds(30).toNanos();
  private static final int NOT_LEARNT = 0;

  private final PollTarget target;
  private final Urgency urgency;
  private final long periodNanos;
  private final String unit;
  private long dueNanoTime;
  private long timesAsked;
  private int misses;
  private int length;

  PollItem(PollTarget target, Urgency urgency, long periodNanos, String unit, long nowNanoTime) {
    this.target = target;
    this.urgency = urgency;
    this.periodNanos = periodNanos;
    this.unit = unit;
    this.dueNanoTime = nowNanoTime;
  }

  PollTarget target() {
    return target;
  }

  /** Number of the parameter; 0 if this is none. */
  int parameter() {
    return target instanceof PollTarget.Parameter(int number) ? number : 0;
  }

  long dueNanoTime() {
    return dueNanoTime;
  }

  /** Data bytes of the answer; only with a length that was learnt. */
  int length() {
    return length;
  }

  void learnt(int dataBytes) {
    length = dataBytes;
  }

  /** Whether it may share a request: what stays away would make the others wait for it. */
  boolean packs() {
    return length != NOT_LEARNT && !isDoubtful();
  }

  /** Whether it may share a request with another one because the same control unit answers. */
  boolean packsWith(PollItem other) {
    return packs() && unit.equals(other.unit);
  }

  private boolean isDoubtful() {
    return misses >= MISSES_BEFORE_DOUBT;
  }

  /**
   * Due again a period after it was due; if it is late by more than that, a period from now: no
   * backlog builds up, and when the link is slow every target is late by the same span.
   */
  void asked(long nowNanoTime) {
    long period = isDoubtful() ? Math.max(periodNanos, DOUBTFUL_NANOS) : periodNanos;
    timesAsked++;
    boolean isFarBehind = nowNanoTime - dueNanoTime > period;
    dueNanoTime = (isFarBehind ? nowNanoTime : dueNanoTime) + period;
  }

  void answered() {
    misses = 0;
  }

  int missed() {
    misses++;
    return misses;
  }

  void postpone(long untilNanoTime) {
    dueNanoTime = untilNanoTime;
  }

  /** Whether it may ride along with a request that goes out now. */
  boolean isNearlyDue(long nowNanoTime) {
    return dueNanoTime - nowNanoTime <= periodNanos / 4;
  }

  /**
   * Whether it goes out before another one: later against its due time, or more urgent, or asked
   * less often; those that share a request are due together afterwards.
   */
  boolean isBefore(PollItem other) {
    if (dueNanoTime != other.dueNanoTime) {
      return dueNanoTime - other.dueNanoTime < 0;
    }
    return urgency == other.urgency
        ? timesAsked < other.timesAsked
        : urgency.compareTo(other.urgency) < 0;
  }
}
