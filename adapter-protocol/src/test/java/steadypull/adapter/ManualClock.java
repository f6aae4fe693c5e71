package steadypull.adapter;

import java.time.Duration;
import steadypull.adapter.link.LinkClock;

/** A clock that stands still unless told; waiting moves it. */
final class ManualClock implements LinkClock {
  private long nanoTime = 1_000_000_000L;

  @Override
  public long nanoTime() {
    return nanoTime;
  }

  @Override
  public void pause(Duration span) {
    advance(span);
  }

  void advance(Duration span) {
    nanoTime += Math.max(0, span.toNanos());
  }

  double seconds() {
    return nanoTime / 1e9;
  }
}
