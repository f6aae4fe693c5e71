package steadypull.tablet;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Compares the clocks of one moment with those of the moment before. What passes on all of them
 * alike is time; what passes on one alone is a setting or a sleep. Daylight saving and time zones
 * change no instant and are never news. One thread.
 */
final class ClockWatch {
  /** Two clocks that part by more than this between two moments have parted: the owner's figure. */
  private static final Duration PARTED = Duration.ofSeconds(2);

  /** Looked at every second: whoever could not look for so long stood still. Our choice. */
  private static final Duration STOOD_STILL = Duration.ofSeconds(10);

  private @Nullable ClockReading before;

  /** What is news at a later moment; mostly nothing. */
  List<TabletNews> take(ClockReading now) {
    ClockReading last = before;
    before = now;
    return last == null ? List.of() : between(last, now);
  }

  private static List<TabletNews> between(ClockReading last, ClockReading now) {
    List<TabletNews> news = new ArrayList<>();
    Duration passed = Duration.ofNanos(now.monotonicNanos() - last.monotonicNanos());
    Duration asleep = asleep(last, now, passed);
    if (asleep.isPositive()) {
      news.add(new TabletNews.Slept(asleep, true));
    } else if (passed.compareTo(STOOD_STILL) > 0) {
      news.add(new TabletNews.Slept(passed, false));
    }
    TabletNews.ClockSet set =
        new TabletNews.ClockSet(
            last.wall().plus(passed).plus(asleep), now.wall(), isSleepUnseen(last, now));
    if (set.by().abs().compareTo(PARTED) > 0) {
      news.add(set);
    }
    return news;
  }

  /** How long the monotonic clock stood still while the machine slept; zero if it did not. */
  private static Duration asleep(ClockReading last, ClockReading now, Duration passed) {
    if (now.uptimeNanos().isEmpty() || last.uptimeNanos().isEmpty()) {
      return Duration.ZERO;
    }
    long uptime = now.uptimeNanos().getAsLong() - last.uptimeNanos().getAsLong();
    Duration more = Duration.ofNanos(uptime).minus(passed);
    return more.compareTo(PARTED) > 0 ? more : Duration.ZERO;
  }

  /** Without the machine's uptime a sleep looks like a clock that was set forward. */
  private static boolean isSleepUnseen(ClockReading last, ClockReading now) {
    return now.uptimeNanos().isEmpty() && now.wall().isAfter(last.wall());
  }
}
