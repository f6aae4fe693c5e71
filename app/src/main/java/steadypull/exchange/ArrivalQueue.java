package steadypull.exchange;

import java.util.ArrayDeque;
import java.util.Comparator;
import java.util.Deque;
import java.util.PriorityQueue;
import steadypull.channel.Sample;

/**
 * Samples that come about in the order of their times and leave in it; those of one time leave as
 * they came. Whatever is not earlier than all before costs next to nothing. One thread.
 */
final class ArrivalQueue {
  /** A sample that came late, and its number, which keeps the order at one time. */
  private record Late(Sample sample, long number) {}

  /** In order; of one time they came before every late one, which something later had passed. */
  private final Deque<Sample> punctual = new ArrayDeque<>();

  private final PriorityQueue<Late> late =
      new PriorityQueue<>(
          Comparator.comparingLong((Late each) -> each.sample().timeMicros())
              .thenComparingLong(Late::number));
  private long count;

  void add(Sample sample) {
    if (punctual.isEmpty() || punctual.getLast().timeMicros() <= sample.timeMicros()) {
      punctual.addLast(sample);
    } else {
      late.add(new Late(sample, count++));
    }
  }

  int size() {
    return punctual.size() + late.size();
  }

  boolean isEmpty() {
    return punctual.isEmpty() && late.isEmpty();
  }

  /** The time of the earliest, which leaves next; there must be one. */
  long firstMicros() {
    return isLateNext() ? late.element().sample().timeMicros() : punctual.getFirst().timeMicros();
  }

  /** Takes out the earliest; there must be one. */
  Sample remove() {
    return isLateNext() ? late.remove().sample() : punctual.removeFirst();
  }

  private boolean isLateNext() {
    return !late.isEmpty()
        && (punctual.isEmpty()
            || late.element().sample().timeMicros() < punctual.getFirst().timeMicros());
  }
}
