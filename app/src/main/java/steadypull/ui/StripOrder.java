package steadypull.ui;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import steadypull.channel.Channel;
import steadypull.drive.StripState;
import steadypull.drive.StripState.StripLevel;

/**
 * Keeps the strips from jumping about: a new order is shown only after it has held for 5 s, or at
 * once where something is urgent or the set of strips is another.
 */
final class StripOrder {
  private static final long HOLD_NANOS = 5_000_000_000L;

  private List<Channel> shown = List.of();
  private List<Channel> wanted = List.of();
  private boolean led;
  private long wantedSinceNanos;

  /**
   * The strips in the order to show.
   *
   * @param given in the order wanted, first to run out first; a strip that has left Holds still
   *     stands over one that has not, so that the enlarged one is the one that is meant
   * @param advised what the advice line is about: first among its equals that have left Holds
   * @param nowNanos a clock that does not run backwards
   */
  List<StripState> arrange(List<StripState> given, Optional<Channel> advised, long nowNanos) {
    List<StripState> strips = loudestFirst(given, advised);
    List<Channel> order = strips.stream().map(StripState::channel).toList();
    if (!order.equals(wanted)) {
      wanted = order;
      wantedSinceNanos = nowNanos;
    }
    boolean held = nowNanos - wantedSinceNanos >= HOLD_NANOS;
    if (held || isUrgent(strips) || !sameChannels(order) || leads(strips) != led) {
      shown = order;
    }
    led = leads(strips);
    return inShownOrder(strips);
  }

  /** Whether the top strip is enlarged: when any strip has left Holds. */
  static boolean leads(List<StripState> strips) {
    return strips.stream().anyMatch(strip -> hasLeftHolds(strip.level()));
  }

  private static List<StripState> loudestFirst(List<StripState> strips, Optional<Channel> advised) {
    return strips.stream()
        .sorted(
            Comparator.comparingInt((StripState strip) -> place(strip.level()))
                .thenComparing(strip -> !isMeant(strip, advised)))
        .toList();
  }

  private static boolean isMeant(StripState strip, Optional<Channel> advised) {
    return hasLeftHolds(strip.level()) && advised.equals(Optional.of(strip.channel()));
  }

  private static int place(StripLevel level) {
    return switch (level) {
      case ACT_NOW -> 0;
      case DERATED -> 1;
      case ADVISE -> 2;
      case MAY_REACH -> 3;
      case HOLDS, LEARNING -> 4;
      case NO_DATA -> 5;
    };
  }

  private static boolean hasLeftHolds(StripLevel level) {
    return switch (level) {
      case MAY_REACH, ADVISE, ACT_NOW, DERATED -> true;
      case HOLDS, NO_DATA, LEARNING -> false;
    };
  }

  private static boolean isUrgent(List<StripState> strips) {
    return !strips.isEmpty() && strips.getFirst().level() == StripLevel.ACT_NOW;
  }

  private boolean sameChannels(List<Channel> order) {
    return Set.copyOf(order).equals(Set.copyOf(shown)) && top(order).equals(top(shown));
  }

  private static Set<Channel> top(List<Channel> order) {
    return order.stream().limit(StripsFace.SHOWN).collect(Collectors.toSet());
  }

  private List<StripState> inShownOrder(List<StripState> strips) {
    List<StripState> arranged = new ArrayList<>(strips);
    arranged.sort(Comparator.comparingInt(strip -> shown.indexOf(strip.channel())));
    return arranged;
  }
}
