package steadypull.adapter.link;

import java.time.Duration;

/** The machine's monotonic clock. */
enum MachineClock implements LinkClock {
  INSTANCE;

  @Override
  public long nanoTime() {
    return System.nanoTime();
  }

  @Override
  public void pause(Duration span) throws InterruptedException {
    if (span.isPositive()) {
      Thread.sleep(span);
    }
  }
}
