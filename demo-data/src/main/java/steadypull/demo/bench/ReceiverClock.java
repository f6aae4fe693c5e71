package steadypull.demo.bench;

import java.time.Duration;
import java.util.concurrent.locks.LockSupport;
import steadypull.adapter.link.LinkClock;

/** The time that a receiver on the bench lives in. One thread at a time. */
sealed interface ReceiverClock extends LinkClock {
  /**
   * Waits for a moment, but not for ever: a look at {@link #nanoTime} tells whether it has come.
   */
  void await(long nanos);

  /** A time of its own, at its own pace. */
  record Own(BenchClock clock) implements ReceiverClock {
    @Override
    public long nanoTime() {
      return clock.nanoTime();
    }

    @Override
    public void pause(Duration span) throws InterruptedException {
      clock.pause(span);
    }

    @Override
    public void await(long nanos) {
      clock.advanceTo(nanos);
    }
  }

  /**
   * The time of the vehicle's bench, which moves while somebody uses that: it is looked at again
   * and again, so that vehicle and receiver are at one place at any speed.
   */
  record Followed(BenchClock vehicle) implements ReceiverClock {
    private static final long BETWEEN_LOOKS_NANOS = 200_000;
    private static final long LONGEST_WAIT_NANOS = 200_000_000;

    @Override
    public long nanoTime() {
      return vehicle.nanoTime();
    }

    @Override
    public void pause(Duration span) throws InterruptedException {
      look(vehicle.nanoTime() + span.toNanos(), span.toNanos());
      if (Thread.interrupted()) {
        throw new InterruptedException();
      }
    }

    @Override
    public void await(long nanos) {
      look(nanos, LONGEST_WAIT_NANOS);
    }

    private void look(long nanos, long longestNanos) {
      long end = System.nanoTime() + longestNanos;
      while (vehicle.nanoTime() < nanos
          && System.nanoTime() < end
          && !Thread.currentThread().isInterrupted()) {
        LockSupport.parkNanos(BETWEEN_LOOKS_NANOS);
      }
    }
  }
}
