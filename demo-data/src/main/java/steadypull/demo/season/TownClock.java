package steadypull.demo.season;

import java.time.LocalDateTime;
import java.time.ZoneOffset;

/** The clock of Withy Quay: three hours behind universal time, two in summer. */
final class TownClock {
  private static final LocalDateTime SUMMER_BEGINS = LocalDateTime.of(2026, 3, 29, 2, 0);

  private TownClock() {}

  /** What the clock is ahead of universal time on a day of the season. */
  static ZoneOffset offset(LocalDateTime local) {
    return ZoneOffset.ofHours(local.isBefore(SUMMER_BEGINS) ? -3 : -2);
  }
}
