package steadypull.adapter.capture;

import java.time.Duration;
import java.util.OptionalDouble;
import steadypull.adapter.link.LinkClock;

/**
 * The time of a capture. It moves when the replayed link is used or somebody pauses, and then waits
 * as long as its speed asks for. Moved by one thread at a time, read by any.
 */
final class ReplayClock implements LinkClock {
  private static final double NANOS_PER_MICRO = 1000;

  private final OptionalDouble speed;
  private volatile long nanoTime;

  /**
   * Begins at the beginning of the capture.
   *
   * @param speed seconds of the capture per second of the day; empty never waits
   */
  ReplayClock(OptionalDouble speed) {
    this.speed = speed;
  }

  @Override
  public long nanoTime() {
    return nanoTime;
  }

  long micros() {
    return (long) (nanoTime / NANOS_PER_MICRO);
  }

  @Override
  public void pause(Duration span) throws InterruptedException {
    if (span.isPositive()) {
      if (speed.isPresent()) {
        Thread.sleep(Duration.ofNanos((long) (span.toNanos() / speed.getAsDouble())));
      }
      long before = nanoTime;
      nanoTime = before + span.toNanos();
      if (Thread.interrupted()) {
        throw new InterruptedException();
      }
    }
  }

  /** Waits until a moment of the capture, as far as the thread is not hurried. */
  void waitUntilMicros(long micros) {
    long nanos = micros * 1000 - nanoTime;
    try {
      pause(Duration.ofNanos(nanos));
    } catch (InterruptedException hurried) {
      Thread.currentThread().interrupt();
      nanoTime = Math.max(nanoTime, micros * 1000);
    }
  }
}
