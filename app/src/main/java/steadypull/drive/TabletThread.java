package steadypull.drive;

import java.time.Duration;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import steadypull.adapter.link.LinkClock;
import steadypull.tablet.Tablet;
import steadypull.tablet.TabletNews;
import steadypull.tablet.TabletWatch;

/**
 * Watches the tablet on a thread of its own while a drive lasts, and keeps it awake. Whatever
 * happens to the watch, the drive goes on.
 */
final class TabletThread implements AutoCloseable {
  private static final long BETWEEN_LOOKS_MILLIS = 1000;
  private static final Duration PATIENCE = Duration.ofSeconds(5);

  private final Tablet tablet;
  private final LinkClock stamps;
  private final Consumer<Arrival> arrivals;
  private final CountDownLatch ending = new CountDownLatch(1);
  private final Thread thread;

  /**
   * Prepares the thread.
   *
   * @param stamps the clock of the vehicle's link, which is the trip's
   * @param arrivals takes what is news, on the tablet's thread
   */
  TabletThread(Tablet tablet, LinkClock stamps, Consumer<Arrival> arrivals) {
    this.tablet = tablet;
    this.stamps = stamps;
    this.arrivals = arrivals;
    this.thread = Thread.ofPlatform().name("tablet").daemon().unstarted(this::watch);
  }

  void start() {
    thread.start();
  }

  private void watch() {
    try (TabletWatch watch = new TabletWatch(tablet, this::tell)) {
      do {
        watch.look();
      } while (!ending.await(BETWEEN_LOOKS_MILLIS, TimeUnit.MILLISECONDS));
    } catch (InterruptedException hurried) {
      Thread.currentThread().interrupt();
    } catch (RuntimeException fault) {
      // Safe to go on: the watch is an addition, and the drive is told that nothing holds any more.
      tell(new TabletNews.MayFallAsleep("The tablet is no longer watched: " + FaultText.of(fault)));
    }
  }

  private void tell(TabletNews news) {
    arrivals.accept(new Arrival.TabletTold(news, stamps.nanoTime()));
  }

  /** Ends the watch, and lets the tablet sleep again. */
  @Override
  public void close() {
    ending.countDown();
    try {
      thread.join(PATIENCE);
      thread.interrupt();
    } catch (InterruptedException hurried) {
      Thread.currentThread().interrupt();
    }
  }
}
