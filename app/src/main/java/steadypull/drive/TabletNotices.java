package steadypull.drive;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import steadypull.store.TripEvent;
import steadypull.tablet.TabletNews;

/** What the driver should see of the tablet's own life, from a trip's events. Pipeline thread. */
final class TabletNotices {
  /** What needs no answer is shown for so long. Our choice. */
  private static final long SHOWN_MICROS = 60_000_000;

  private Optional<TabletNews> drain = Optional.empty();
  private Optional<TabletNews> sleepy = Optional.empty();
  private Optional<TabletNews> latest = Optional.empty();
  private long latestMicros;
  private Duration clockSetBy = Duration.ZERO;

  /** Takes an event of kind CLOCK or TABLET; one that is not understood is no news. */
  void take(TripEvent event) {
    TabletText.news(event).ifPresent(news -> take(news, event.timeMicros()));
  }

  private void take(TabletNews news, long timeMicros) {
    latest = Optional.of(news);
    latestMicros = timeMicros;
    switch (news) {
      case TabletNews.OnBattery _, TabletNews.BatteryUnder _, TabletNews.BatteryNearlyEmpty _ ->
          drain = latest;
      case TabletNews.Charging _ -> drain = Optional.empty();
      case TabletNews.ClockSet set -> clockSetBy = clockSetBy.plus(set.by());
      case TabletNews.MayFallAsleep _ -> sleepy = latest;
      case TabletNews.Slept _ -> {}
    }
  }

  /** What is to be shown at a moment: a low battery as long as it is low, the rest for a minute. */
  Optional<TabletNews> notice(long nowMicros) {
    Optional<TabletNews> low = drain.filter(news -> !(news instanceof TabletNews.OnBattery));
    return low.or(() -> latest.filter(_ -> nowMicros - latestMicros < SHOWN_MICROS));
  }

  /** What still holds when another trip begins. */
  List<TabletNews> standing() {
    return Stream.of(sleepy, drain).flatMap(Optional::stream).toList();
  }

  /** How far the wall's clock was set in all; negative means back. */
  Duration clockSetBy() {
    return clockSetBy;
  }
}
