package steadypull.exchange;

import java.util.HashMap;
import java.util.Map;
import java.util.function.Consumer;
import steadypull.channel.Channel;
import steadypull.channel.Sample;

/**
 * Brings samples that arrive about in the order of their times into that order, with one value of a
 * channel in a microsecond: a second one moves to the next free microsecond. Looks ahead by a fixed
 * number of samples. One thread.
 */
final class TimeOrder {
  /** A sample came after more later ones than could be waited for. */
  static final class TooLate extends RuntimeException {
    TooLate(Sample sample, long latestMicros) {
      super(
          "Expected samples about in time order, found one of %d us after %d us were passed on"
              .formatted(sample.timeMicros(), latestMicros));
    }
  }

  /** When a channel had its last sample. */
  private static final class Last {
    private long micros = -1;
  }

  private final int lookAhead;
  private final Consumer<Sample> next;
  private final ArrivalQueue arrived = new ArrivalQueue();
  private final ArrivalQueue placed = new ArrivalQueue();
  private final Map<Channel, Last> lastTimes = new HashMap<>();
  private long passedMicros;

  /**
   * An order whose samples go on to the next.
   *
   * @param lookAhead how many samples wait for an earlier one that may still come
   */
  TimeOrder(int lookAhead, Consumer<Sample> next) {
    this.lookAhead = lookAhead;
    this.next = next;
  }

  /** Takes the next sample. */
  void add(Sample sample) {
    arrived.add(sample);
    while (arrived.size() > lookAhead) {
      place(arrived.remove());
    }
  }

  /** Passes on what still waits. */
  void finish() {
    while (!arrived.isEmpty()) {
      place(arrived.remove());
    }
    release(Long.MAX_VALUE);
  }

  private void place(Sample sample) {
    if (sample.timeMicros() < passedMicros) {
      throw new TooLate(sample, passedMicros);
    }
    passedMicros = sample.timeMicros();
    release(passedMicros);
    placed.add(atFreeTime(sample));
  }

  private Sample atFreeTime(Sample sample) {
    Last last = lastTimes.computeIfAbsent(sample.channel(), _ -> new Last());
    long time = Math.max(sample.timeMicros(), last.micros + 1);
    last.micros = time;
    return time == sample.timeMicros()
        ? sample
        : new Sample(sample.channel(), time, sample.value());
  }

  private void release(long beforeMicros) {
    while (!placed.isEmpty() && placed.firstMicros() < beforeMicros) {
      next.accept(placed.remove());
    }
  }
}
