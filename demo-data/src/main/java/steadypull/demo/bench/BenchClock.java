package steadypull.demo.bench;

import java.time.Duration;
import java.util.OptionalDouble;
import java.util.concurrent.locks.LockSupport;
import steadypull.adapter.link.LinkClock;

/**
 * The bench's own time. It moves only when the link is used or somebody pauses, so that a drive is
 * the same at any speed; with a speed it waits inside so that the day keeps up. Moved by one thread
 * at a time, read by any.
 */
final class BenchClock implements LinkClock {
  private static final long LONGEST_DEBT_NANOS = 500_000_000;

  private final OptionalDouble speed;
  private volatile long now;
  private long anchorBench;
  private long anchorMachine;
  private boolean isAnchored;

  BenchClock(OptionalDouble speed) {
    this.speed = speed;
  }

  @Override
  public long nanoTime() {
    return now;
  }

  @Override
  public void pause(Duration span) throws InterruptedException {
    if (span.isPositive()) {
      advanceTo(now + span.toNanos());
      if (Thread.interrupted()) {
        throw new InterruptedException();
      }
    }
  }

  /** Moves to a moment, waiting if the bench runs at a speed. Never moves back. */
  void advanceTo(long nanos) {
    if (nanos <= now) {
      return;
    }
    if (speed.isPresent()) {
      keepPace(nanos, speed.getAsDouble());
    }
    now = nanos;
  }

  private void keepPace(long nanos, double pace) {
    long machine = System.nanoTime();
    if (!isAnchored || machine - due(nanos, pace) > LONGEST_DEBT_NANOS) {
      anchorBench = now;
      anchorMachine = machine;
      isAnchored = true;
    }
    long wait = due(nanos, pace) - System.nanoTime();
    while (wait > 0 && !Thread.currentThread().isInterrupted()) {
      LockSupport.parkNanos(wait);
      wait = due(nanos, pace) - System.nanoTime();
    }
  }

  private long due(long nanos, double pace) {
    return anchorMachine + (long) ((nanos - anchorBench) / pace);
  }
}
