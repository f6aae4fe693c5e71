package steadypull.drive;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import steadypull.advice.AdviceEvent;
import steadypull.advice.Level;
import steadypull.advice.RuleSet;
import steadypull.review.Warning;

/**
 * Writes down the warnings among what the rules say: advice that was raised as caution or warning
 * and told a time to the limit. It stands until its advisory is cleared, whichever rule it then
 * goes by. One thread.
 */
public final class WarningLog {
  private static final long SECOND_MICROS = 1_000_000;

  private final RuleSet rules;
  private final Map<String, AdviceEvent> standing = new LinkedHashMap<>();
  private final List<Warning> warnings = new ArrayList<>();

  /**
   * A log of a drive.
   *
   * @param rules by which it was judged
   */
  public WarningLog(RuleSet rules) {
    this.rules = rules;
  }

  /** Takes what was said, in order. */
  public void accept(AdviceEvent event) {
    event.rule().flatMap(rules::cause).ifPresent(cause -> accept(cause, event));
  }

  private void accept(String cause, AdviceEvent event) {
    switch (event.kind()) {
      case RAISED -> {
        if (isWarning(event)) {
          standing.put(cause, event);
        }
      }
      case CLEARED ->
          Optional.ofNullable(standing.remove(cause))
              .ifPresent(raised -> warnings.add(warning(raised, second(event))));
      case ESCALATED,
          EASED,
          JOINED,
          SUPPRESSED,
          ADVICE_HELD,
          ADVICE_FAILED,
          ADVICE_NOT_FOLLOWED,
          OUT_OF_SERVICE,
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
  public List<Warning> upTo(int seconds) {
    List<Warning> all = new ArrayList<>(warnings);
    standing.values().forEach(raised -> all.add(warning(raised, seconds + 1)));
    return all;
  }
}
