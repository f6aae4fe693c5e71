package steadypull.drive;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import steadypull.advice.AdviceEvent;
import steadypull.advice.Level;
import steadypull.review.Warning;

/**
 * Writes down the warnings among what the rules say: advice that was raised as caution or warning
 * and told a time to the limit. One thread.
 */
final class WarningLog {
  private static final long SECOND_MICROS = 1_000_000;

  private final Map<String, AdviceEvent> standing = new LinkedHashMap<>();
  private final List<Warning> warnings = new ArrayList<>();

  /** Takes what was said, in order. */
  void accept(AdviceEvent event) {
    event.rule().ifPresent(rule -> accept(rule, event));
  }

  private void accept(String rule, AdviceEvent event) {
    switch (event.kind()) {
      case RAISED -> {
        if (isWarning(event)) {
          standing.put(rule, event);
        }
      }
      case CLEARED ->
          Optional.ofNullable(standing.remove(rule))
              .ifPresent(raised -> warnings.add(warning(raised, second(event))));
      case ESCALATED,
          EASED,
          ACKNOWLEDGED,
          SHELVED,
          UNSHELVED,
          DERATE_BEGAN,
          DERATE_ENDED,
          POWER_LIMITED -> {}
    }
  }

  private static boolean isWarning(AdviceEvent event) {
    return event.level().filter(level -> level != Level.NOTICE).isPresent()
        && event.channel().isPresent()
        && event.limit().isPresent()
        && event.secondsToLimit().isPresent();
  }

  private static Warning warning(AdviceEvent raised, int until) {
    return new Warning(
        raised.channel().orElseThrow(), raised.limit().orElseThrow(), second(raised), until);
  }

  private static int second(AdviceEvent event) {
    return (int) (event.timeMicros() / SECOND_MICROS);
  }

  /** All warnings of a drive that has ended after so many seconds, those that still stand last. */
  List<Warning> upTo(int seconds) {
    List<Warning> all = new ArrayList<>(warnings);
    standing.values().forEach(raised -> all.add(warning(raised, seconds + 1)));
    return all;
  }
}
