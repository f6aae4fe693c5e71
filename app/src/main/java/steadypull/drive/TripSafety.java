package steadypull.drive;

import java.time.Duration;
import java.util.Optional;
import steadypull.tablet.TabletNews;

/** Decides when news of the tablet end a trip. */
final class TripSafety {
  /**
   * A sleep that leaves a gap in its trip; after a longer one the models know nothing any more, and
   * what comes is another trip. Our choice.
   */
  static final Duration LONGEST_GAP = Duration.ofMinutes(30);

  private TripSafety() {}

  /** Why a trip ends with these news; empty if it goes on. */
  static Optional<EndedTrip.Cause> endedBy(TabletNews news) {
    return switch (news) {
      case TabletNews.BatteryNearlyEmpty _ -> Optional.of(EndedTrip.Cause.BATTERY_NEARLY_EMPTY);
      case TabletNews.Slept(Duration length, boolean _) ->
          length.compareTo(LONGEST_GAP) > 0
              ? Optional.of(EndedTrip.Cause.LONG_SLEEP)
              : Optional.empty();
      case TabletNews.OnBattery _, TabletNews.BatteryUnder _, TabletNews.Charging _ ->
          Optional.empty();
      case TabletNews.MayFallAsleep _, TabletNews.ClockSet _ -> Optional.empty();
    };
  }
}
