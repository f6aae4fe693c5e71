package steadypull.adapter.polling;

import java.time.Duration;

/** A target with its due time and its record of misses. */
final class PollItem {
  private static final int MISSES_BEFORE_DOUBT = 5;
  private static final Duration DOUBTFUL_PERIOD = Duration.ofSeconds(30);

  private final PollTarget target;
  private final Urgency urgency;
  private final long periodNanos;
  private long dueNanoTime;
  private int misses;
  private boolean packs;

  PollItem(PollTarget target, Urgency urgency, long periodNanos, boolean packs, long nowNanoTime) {
    this.target = target;
    this.urgency = urgency;
    this.periodNanos = periodNanos;
    this.packs = packs;
    this.dueNanoTime = nowNanoTime;
  }

  PollTarget target() {
    return target;
  }

  Urgency urgency() {
    return urgency;
  }

  long dueNanoTime() {
    return dueNanoTime;
  }

  boolean packs() {
    return packs;
  }

  void learnt() {
    packs = true;
  }

  /** Due again a period after it was due, but never in the past: no backlog builds up. */
  void asked(long nowNanoTime) {
    long period =
        misses >= MISSES_BEFORE_DOUBT
            ? Math.max(periodNanos, DOUBTFUL_PERIOD.toNanos())
            : periodNanos;
    dueNanoTime = Math.max(dueNanoTime + period, nowNanoTime);
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
}
