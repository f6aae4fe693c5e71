package steadypull.exchange;

import java.util.Comparator;
import java.util.HashMap;
import java.util.Map;
import java.util.PriorityQueue;
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

  /** A sample and its number, which keeps the order at one time. */
  private record Numbered(Sample sample, long number) {}

  private final int lookAhead;
  private final Consumer<Sample> next;
  private final PriorityQueue<Numbered> arrived = queue();
  private final PriorityQueue<Numbered> placed = queue();
  private final Map<Channel, Long> lastTimes = new HashMap<>();
  private long passedMicros;
  private long count;

  /**
   * An order whose samples go on to the next.
   *
   * @param lookAhead how many samples wait for an earlier one that may still come
   */
  TimeOrder(int lookAhead, Consumer<Sample> next) {
    this.lookAhead = lookAhead;
    this.next = next;
  }

  private static PriorityQueue<Numbered> queue() {
    return new PriorityQueue<>(
        Comparator.comparingLong((Numbered each) -> each.sample().timeMicros())
            .thenComparingLong(Numbered::number));
  }

  /** Takes the next sample. */
  void add(Sample sample) {
    arrived.add(new Numbered(sample, count++));
    while (arrived.size() > lookAhead) {
      place(arrived.remove().sample());
    }
  }

  /** Passes on what still waits. */
  void finish() {
    while (!arrived.isEmpty()) {
      place(arrived.remove().sample());
    }
    release(Long.MAX_VALUE);
  }

  private void place(Sample sample) {
    if (sample.timeMicros() < passedMicros) {
      throw new TooLate(sample, passedMicros);
    }
    passedMicros = sample.timeMicros();
    release(passedMicros);
    placed.add(new Numbered(atFreeTime(sample), count++));
  }

  private Sample atFreeTime(Sample sample) {
    long free = lastTimes.getOrDefault(sample.channel(), -1L) + 1;
    long time = Math.max(sample.timeMicros(), free);
    lastTimes.put(sample.channel(), time);
    return time == sample.timeMicros()
        ? sample
        : new Sample(sample.channel(), time, sample.value());
  }

  private void release(long beforeMicros) {
    while (!placed.isEmpty() && placed.element().sample().timeMicros() < beforeMicros) {
      next.accept(placed.remove().sample());
    }
  }
}
