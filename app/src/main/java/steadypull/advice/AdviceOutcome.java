package steadypull.advice;

import java.util.Optional;
import steadypull.thermal.Derate;

/**
 * What became of advice to take load off, from its being given to the end of its advisory: whether
 * it was followed, and whether it then held. It held if after that no channel of it came over its
 * limit and no power was cut; what was over already has to be back under at the end. One thread.
 */
final class AdviceOutcome {
  /** Whoever follows keeps to it for so long (our choice); passing traffic does not. */
  private static final long KEEPS_MICROS = 5_000_000;

  private static final long NOT_YET = Long.MAX_VALUE;

  private boolean isGiven;
  private long doingSinceMicros = NOT_YET;
  private boolean isFollowed;
  private boolean wasOver;
  private boolean hasComeOver;
  private boolean isOver;

  /** Another advisory begins. */
  void begins() {
    isGiven = false;
    doingSinceMicros = NOT_YET;
    isFollowed = false;
    hasComeOver = false;
  }

  /**
   * Takes the next second in which it stands.
   *
   * @param isDone whether the driver does what is advised
   * @param channel what the advice is about
   */
  void step(SituationFacts facts, boolean isDone, Optional<ChannelFacts> channel) {
    isGiven = true;
    isOver =
        channel.map(ChannelFacts::isOverLimit).orElse(false)
            || facts.situation().derate() instanceof Derate.Active;
    if (!isDone && !isFollowed) {
      doingSinceMicros = NOT_YET;
    } else if (doingSinceMicros == NOT_YET) {
      doingSinceMicros = facts.timeMicros();
    }
    if (!isFollowed && isDone && facts.timeMicros() - doingSinceMicros >= KEEPS_MICROS) {
      isFollowed = true;
      wasOver = isOver;
    } else if (isFollowed) {
      wasOver &= isOver;
      hasComeOver |= isOver && !wasOver;
    }
  }

  /** What became of it, at the end of its advisory; empty if nothing was advised. */
  Optional<AdviceEvent.Kind> end() {
    if (!isGiven) {
      return Optional.empty();
    }
    if (!isFollowed) {
      return Optional.of(AdviceEvent.Kind.ADVICE_NOT_FOLLOWED);
    }
    return Optional.of(
        hasComeOver || (wasOver && isOver)
            ? AdviceEvent.Kind.ADVICE_FAILED
            : AdviceEvent.Kind.ADVICE_HELD);
  }
}
