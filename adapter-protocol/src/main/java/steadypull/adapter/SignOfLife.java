package steadypull.adapter;

import java.time.Duration;
import java.util.OptionalLong;
import steadypull.adapter.link.LinkClock;

/**
 * Tells the listener where the link stands: at every change, and again before a second has passed.
 * Also carries the wish to stop. Everything on the reader's thread but {@link #stop}.
 */
final class SignOfLife implements Pulse {
  private static final Duration REPETITION = Duration.ofMillis(800);
  private static final Duration SLICE = Duration.ofMillis(100);

  /** What a stop may wait for the last trouble codes; estimated: three questions of 0.3 s. */
  private static final Duration LAST_QUESTIONS = Duration.ofMillis(1500);

  private final LinkClock clock;
  private final ReaderListener listener;
  private volatile boolean stops;
  private boolean lastQuestionsAreAllowed;
  private OptionalLong lastQuestionsEnd = OptionalLong.empty();
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

  /**
   * While allowed, a wish to stop lets the port finish what it asks and ask a little more. An
   * interruption never does.
   */
  void allowLastQuestions(boolean isAllowed) {
    lastQuestionsAreAllowed = isAllowed;
  }

  /** Whether nobody wishes to stop; while last questions are allowed the port may still go on. */
  boolean isWanted() {
    return !stops && goesOn();
  }

  @Override
  public boolean goesOn() {
    if (Thread.currentThread().isInterrupted() || (stops && !isFinishing())) {
      return false;
    }
    if (clock.nanoTime() - lastNanoTime >= REPETITION.toNanos()) {
      announce(state);
    }
    return true;
  }

  private boolean isFinishing() {
    long now = clock.nanoTime();
    if (lastQuestionsEnd.isEmpty()) {
      lastQuestionsEnd = OptionalLong.of(now + LAST_QUESTIONS.toNanos());
    }
    return lastQuestionsAreAllowed && now - lastQuestionsEnd.getAsLong() < 0;
  }

  /** Waits, unless the reader is to stop. */
  void pause(Duration span) {
    pauseUntil(clock.nanoTime() + span.toNanos());
  }

  /** Waits for a moment of the clock, unless the reader is to stop. */
  void pauseUntil(long nanoTime) {
    while (isWanted()) {
      long left = nanoTime - clock.nanoTime();
      if (left <= 0) {
        return;
      }
      pauseOnce(left < SLICE.toNanos() ? Duration.ofNanos(left) : SLICE);
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
