package steadypull.tablet;

import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * Turns what is read of battery and charger into news, each once: a mark is told again only after
 * the battery was well above it. One thread.
 */
final class PowerWatch {
  /**
   * Under these, in percent, a draining battery is told. 20 is the owner's figure, 15 and 10 ours.
   */
  private static final Set<Integer> MARKS = new TreeSet<>(Set.of(10, 15, 20));

  /** At this and under, a draining battery is nearly empty: the owner's figure. */
  private static final int NEARLY_EMPTY = 5;

  /** So much above a mark it may be told again. Our choice. */
  private static final int CLEAR = 5;

  private final Set<Integer> told = new TreeSet<>();
  private boolean isDrainTold;

  /** What is news in a reading; nothing can be told of a battery that is not there or not known. */
  Optional<TabletNews> take(Power power) {
    return switch (power) {
      case Power.Battery battery -> take(battery);
      case Power.NoBattery _, Power.CouldNotTell _ -> Optional.empty();
    };
  }

  private Optional<TabletNews> take(Power.Battery battery) {
    int percent = battery.percent();
    told.removeIf(mark -> percent >= mark + CLEAR);
    Optional<Integer> mark = battery.draining() ? mark(percent) : Optional.empty();
    if (mark.isPresent() && told.add(mark.get())) {
      isDrainTold = true;
      return Optional.of(fallenTo(mark.get(), percent));
    }
    if (!battery.onCharger() && !isDrainTold) {
      isDrainTold = true;
      return Optional.of(new TabletNews.OnBattery(percent));
    }
    if (battery.onCharger() && !battery.draining() && isDrainTold) {
      isDrainTold = false;
      return Optional.of(new TabletNews.Charging(percent));
    }
    return Optional.empty();
  }

  /** The lowest mark that the battery has fallen under. */
  private static Optional<Integer> mark(int percent) {
    return percent <= NEARLY_EMPTY
        ? Optional.of(NEARLY_EMPTY)
        : MARKS.stream().filter(mark -> percent < mark).findFirst();
  }

  private static TabletNews fallenTo(int mark, int percent) {
    return mark == NEARLY_EMPTY
        ? new TabletNews.BatteryNearlyEmpty(percent)
        : new TabletNews.BatteryUnder(mark, percent);
  }
}
