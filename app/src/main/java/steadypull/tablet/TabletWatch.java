package steadypull.tablet;

import java.util.function.Consumer;

/**
 * Watches a tablet while something is recorded: keeps it awake, and tells what is news. Whoever
 * owns it calls {@link #look} once a second. One thread, which it may keep waiting for seconds.
 */
public final class TabletWatch implements AutoCloseable {
  /** A battery is asked at every so many looks: it changes by the minute. */
  private static final int LOOKS_BETWEEN_POWER = 30;

  private final Tablet tablet;
  private final Consumer<TabletNews> news;
  private final PowerWatch power = new PowerWatch();
  private final ClockWatch clocks = new ClockWatch();
  private final Awake awake;
  private boolean isLetGoTold;
  private int looks;

  /**
   * Begins: from now on the tablet is kept awake, or it is told that it is not.
   *
   * @param news takes what is news, on the calling thread
   */
  public TabletWatch(Tablet tablet, Consumer<TabletNews> news) {
    this.tablet = tablet;
    this.news = news;
    this.awake = tablet.awake().begin();
    if (awake instanceof Awake.NotHeld(String reason)) {
      news.accept(new TabletNews.MayFallAsleep(reason));
    }
  }

  /** Looks at clocks, and now and then at the battery and at what keeps the tablet awake. */
  public void look() {
    tablet.clocks().read().ifPresent(reading -> clocks.take(reading).forEach(news));
    if (looks % LOOKS_BETWEEN_POWER == 0) {
      power.take(tablet.power().read()).ifPresent(news);
      tellIfLetGo();
    }
    looks++;
  }

  /** A system service may be restarted meanwhile, and its lock be gone. */
  private void tellIfLetGo() {
    if (!isLetGoTold && awake instanceof Awake.Held held && !held.holds().getAsBoolean()) {
      isLetGoTold = true;
      news.accept(new TabletNews.MayFallAsleep("What kept it awake has ended by itself."));
    }
  }

  /** Lets the tablet sleep again. */
  @Override
  public void close() {
    awake.close();
  }
}
