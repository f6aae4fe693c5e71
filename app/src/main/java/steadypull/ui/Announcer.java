package steadypull.ui;

import java.util.Optional;
import steadypull.advice.AdviceLine;
import steadypull.advice.Level;

/**
 * Decides when a tone is due: once for each advisory that asks for an answer, again when it becomes
 * a warning. Never two within 10 s but for a warning, and a caution at most once a minute (common
 * practice, no source): what is due meanwhile waits. A reducer over what is shown. One thread.
 */
final class Announcer {
  private static final long APART_MICROS = 10_000_000;
  private static final long CAUTIONS_APART_MICROS = 60_000_000;
  private static final long NEVER = Long.MIN_VALUE / 2;

  private Optional<Level> told = Optional.empty();
  private long soundedMicros = NEVER;
  private long cautionMicros = NEVER;

  /**
   * Takes what is shown at a moment of the trip.
   *
   * @return the level whose tone is due now
   */
  Optional<Level> step(long timeMicros, AdviceLine line) {
    Optional<Level> asking = asking(line);
    if (asking.isEmpty()) {
      told = Optional.empty();
      return Optional.empty();
    }
    boolean isTold = told.filter(before -> before.compareTo(asking.get()) >= 0).isPresent();
    if (isTold || !isTime(asking.get(), timeMicros)) {
      return Optional.empty();
    }
    told = asking;
    soundedMicros = timeMicros;
    cautionMicros = asking.get() == Level.CAUTION ? timeMicros : cautionMicros;
    return asking;
  }

  private boolean isTime(Level level, long timeMicros) {
    return level == Level.WARNING
        || (timeMicros - soundedMicros >= APART_MICROS
            && timeMicros - cautionMicros >= CAUTIONS_APART_MICROS);
  }

  /** What nobody has answered yet. */
  private static Optional<Level> asking(AdviceLine line) {
    if (!(line.response() instanceof AdviceLine.Response.None)) {
      return Optional.empty();
    }
    return switch (line.state()) {
      case ADVISE, LIMITED_POWER -> Optional.of(Level.CAUTION);
      case ACT_NOW -> Optional.of(Level.WARNING);
      case HOLDS, MAY_REACH, CODE_STORED, HOLDS_AGAIN, LINK_LOST, LEARNING -> Optional.empty();
    };
  }
}
