package steadypull.demo.bench;

import java.time.Duration;
import java.util.OptionalLong;
import steadypull.adapter.link.Link;
import steadypull.adapter.link.LinkException;

/** A link to a bench in memory: every use moves the bench's clock by what it would have taken. */
final class BenchLink implements Link {
  private static final long LOOK_NANOS = 20_000;

  /** A port hands over what has gathered in a millisecond. */
  private static final long GATHER_NANOS = 1_000_000;

  private static final Duration LONGEST_PATIENCE = Duration.ofHours(1);

  private final Bench bench;
  private volatile boolean isOpen = true;

  BenchLink(Bench bench) {
    this.bench = bench;
  }

  @Override
  public String address() {
    return bench.address();
  }

  @Override
  public void write(byte[] bytes) throws LinkException {
    for (byte character : bytes) {
      requireUsable("write to");
      BenchClock clock = bench.benchClock();
      clock.advanceTo(clock.nanoTime() + bench.characterNanos());
      bench.adapter().hear(character, clock.nanoTime());
    }
  }

  @Override
  public byte[] read(Duration patience) throws LinkException {
    requireUsable("read from");
    BenchClock clock = bench.benchClock();
    byte[] here = bench.adapter().take(clock.nanoTime());
    if (here.length > 0) {
      return here;
    }
    Duration bounded = patience.compareTo(LONGEST_PATIENCE) < 0 ? patience : LONGEST_PATIENCE;
    long deadline = clock.nanoTime() + Math.max(LOOK_NANOS, bounded.toNanos());
    while (here.length == 0 && clock.nanoTime() < deadline) {
      OptionalLong next = bench.adapter().nextNanos();
      boolean comes = next.isPresent() && next.getAsLong() <= deadline;
      clock.advanceTo(comes ? Math.min(deadline, next.getAsLong() + GATHER_NANOS) : deadline);
      requireUsable("read from");
      here = bench.adapter().take(clock.nanoTime());
    }
    return here;
  }

  @Override
  public void close() {
    isOpen = false;
  }

  private void requireUsable(String attempt) throws LinkException {
    if (!isOpen) {
      throw new LinkException(
          bench.address(), attempt, "this link was closed", "Open it again.", null);
    }
    bench.requirePresent(attempt);
  }
}
