package steadypull.advice;

import java.util.ArrayDeque;
import java.util.Deque;

/** Counts in how many of the last 300 s something was so. One thread. */
final class RecentSeconds {
  private static final long WINDOW_MICROS = 300_000_000;

  private final Deque<Long> seconds = new ArrayDeque<>();

  /** Takes the next second. */
  void add(long timeMicros, boolean isSo) {
    if (isSo) {
      seconds.addLast(timeMicros);
    }
    while (!seconds.isEmpty() && seconds.getFirst() <= timeMicros - WINDOW_MICROS) {
      seconds.removeFirst();
    }
  }

  int count() {
    return seconds.size();
  }
}
