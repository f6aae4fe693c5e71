package steadypull.demo.bench;

import java.util.OptionalLong;

/**
 * Runs a bench adapter on the machine's time, faster or slower by its speed, for ports that cannot
 * be slowed: bytes in from one thread, bytes out to another. Thread-safe.
 */
final class BenchPump {
  private static final double NANOS = 1e9;
  private static final long LONGEST_WAIT_MILLIS = 50;

  private final BenchSettings settings;
  private final BenchAdapter adapter;
  private final double speed;
  private final long began = System.nanoTime();

  BenchPump(BenchSettings settings) {
    this.settings = settings;
    speed = settings.speed().orElse(1);
    adapter = BenchAdapter.of(settings);
  }

  /** The bench's present moment. */
  private long now() {
    return (long) ((System.nanoTime() - began) * speed);
  }

  /** Whether the port is there. */
  boolean isPresent() {
    return !settings.has(Fault.Kind.VANISH, now() / NANOS);
  }

  synchronized void hear(byte[] bytes, int count) {
    long at = now();
    for (int i = 0; i < count; i++) {
      adapter.hear(bytes[i], at);
    }
    notifyAll();
  }

  /** Waits for bytes that are due; empty once the port has vanished. */
  synchronized byte[] awaitDue() throws InterruptedException {
    byte[] due = adapter.take(now());
    while (due.length == 0 && isPresent()) {
      wait(waitMillis());
      due = adapter.take(now());
    }
    return due;
  }

  private long waitMillis() {
    OptionalLong next = adapter.nextNanos();
    if (next.isEmpty()) {
      return LONGEST_WAIT_MILLIS;
    }
    return Math.clamp((long) ((next.getAsLong() - now()) / speed / 1e6), 1, LONGEST_WAIT_MILLIS);
  }
}
