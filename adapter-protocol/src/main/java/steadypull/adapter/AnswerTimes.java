package steadypull.adapter;

import java.time.Duration;

/**
 * Learns how long the vehicle takes to answer, and how long the adapter should wait for it: half as
 * much again as the slowest answer of the last minute or two, and some for the adapter itself. An
 * answer that was due and did not come doubles that for a while. Reader thread only.
 */
final class AnswerTimes {
  /** Unit of the adapter's setting, 4.096 ms (data sheet of an AT-command adapter). */
  private static final long UNIT_NANOS = 4_096_000;

  /** P2 of ISO 15765-4 is 50 ms at most; a little for the adapter. */
  private static final int LEAST_UNITS = 15;

  private static final int MOST_UNITS = 0xFF;

  /** What adapters wait by themselves: 200 ms or less. */
  private static final int USUAL_UNITS = 0x32;

  private static final long MARGIN_NANOS = Duration.ofMillis(20).toNanos();
  private static final long SPAN_NANOS = Duration.ofMinutes(1).toNanos();

  /** An answer this late was promised first ("response pending"); the adapter waits by itself. */
  private static final long PROMISED_NANOS = Duration.ofMillis(500).toNanos();

  private static final int ENOUGH_ANSWERS = 20;

  private long spanStart;
  private long slowestNow;
  private long slowestBefore;
  private int answers;
  private int present = USUAL_UNITS;
  private int raised;

  AnswerTimes(long nowNanoTime) {
    spanStart = nowNanoTime;
  }

  /** Takes how long an answer took, from the end of the request on. */
  void answered(long spanNanos, long nowNanoTime) {
    if (spanNanos < PROMISED_NANOS) {
      answers++;
      slowestNow = Math.max(slowestNow, spanNanos);
    }
    if (nowNanoTime - spanStart >= SPAN_NANOS) {
      spanStart = nowNanoTime;
      slowestBefore = slowestNow;
      slowestNow = 0;
      raised = 0;
    }
  }

  /** Notes that an answer that had come before did not come. */
  void missed() {
    raised = Math.min(MOST_UNITS, 2 * Math.max(present, raised));
  }

  /** The setting that the adapter should have, in its units; the present one if that will do. */
  int wanted() {
    if (raised > present) {
      return raised;
    }
    if (answers < ENOUGH_ANSWERS) {
      return present;
    }
    long slowest = Math.max(slowestNow, slowestBefore);
    long units = (slowest + slowest / 2 + MARGIN_NANOS) / UNIT_NANOS + 1;
    int learnt = Math.max(raised, Math.clamp(units, LEAST_UNITS, MOST_UNITS));
    boolean isNear = Math.abs(learnt - present) * 4 <= present;
    return isNear ? present : learnt;
  }

  /** The setting that the adapter has. */
  int present() {
    return present;
  }

  /** Notes that the adapter was told. */
  void told(int units) {
    present = units;
  }
}
