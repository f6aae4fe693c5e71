package steadypull.adapter;

import java.time.Duration;
import steadypull.adapter.link.LinkClock;

/**
 * Tells the listener where the link stands: at every change, and again before a second has passed.
 * Also carries the wish to stop. Everything on the reader's thread but {@link #stop}.
 */
final class SignOfLife implements Pulse {
  private static final Duration REPETITION = Duration.ofMillis(800);
  private static final Duration SLICE = Duration.ofMillis(100);

  private final LinkClock clock;
  private final ReaderListener listener;
  private volatile boolean stops;
  private LinkState state;
  private long lastNanoTime;

  SignOfLife(LinkClock clock, ReaderListener listener, LinkState first) {
    this.clock = clock;
    this.listener = listener;
    this.state = first;
  }

  /** Any thread. */
  void stop() {
    stops = true;
  }

  LinkState state() {
    return state;
  }

  void announce(LinkState next) {
    state = next;
    lastNanoTime = clock.nanoTime();
    listener.linkState(state, lastNanoTime);
  }

  @Override
  public boolean goesOn() {
    if (stops || Thread.currentThread().isInterrupted()) {
      return false;
    }
    if (clock.nanoTime() - lastNanoTime >= REPETITION.toNanos()) {
      announce(state);
    }
    return true;
  }

  /** Waits, unless the reader is to stop. */
  void pause(Duration span) {
    long deadline = clock.nanoTime() + span.toNanos();
    while (goesOn()) {
      Duration left = Duration.ofNanos(deadline - clock.nanoTime());
      if (!left.isPositive()) {
        return;
      }
      pauseOnce(left.compareTo(SLICE) < 0 ? left : SLICE);
    }
  }

  private void pauseOnce(Duration span) {
    try {
      clock.pause(span);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
