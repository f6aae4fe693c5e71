package steadypull.adapter.position;

import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Puts sentences together into one report for each moment. A moment is reported as soon as its GGA
 * and its RMC are here; a receiver that sends only one of them is reported when the next moment
 * begins or when it pauses. Receiver thread only.
 */
final class Moments {
  /** Heights are measured again some seconds after the last sentence that denied it. */
  private static final long DIMENSIONS_HOLD_NANOS = 3_000_000_000L;

  private @Nullable Moment moment;
  private boolean isReported = true;
  private long flatUntilNanoTime;
  private boolean isFlat;

  /** Takes a sentence; gives the report that it completes. */
  Optional<PositionReport> accept(Sentence sentence, long nanoTime) {
    return switch (sentence) {
      case Sentence.Timed timed -> accept(timed, nanoTime);
      case Sentence.Motion motion -> {
        open().ifPresent(present -> present.add(motion));
        yield Optional.empty();
      }
      case Sentence.Dimensions(boolean isHeightMeasured) -> {
        isFlat = !isHeightMeasured;
        flatUntilNanoTime = nanoTime + DIMENSIONS_HOLD_NANOS;
        yield Optional.empty();
      }
    };
  }

  private Optional<PositionReport> accept(Sentence.Timed timed, long nanoTime) {
    Moment present = moment;
    Optional<PositionReport> report = Optional.empty();
    if (present == null || !present.isAt(timed.time())) {
      report = pause(nanoTime);
      present = new Moment(timed.time(), nanoTime);
      moment = present;
      isReported = false;
    }
    present.add(timed);
    return present.isComplete() ? pause(nanoTime) : report;
  }

  /** Gives what was said of the present moment, if it was not given yet. */
  Optional<PositionReport> pause(long nanoTime) {
    Optional<PositionReport> report = open().map(present -> present.report(hasHeight(nanoTime)));
    isReported = true;
    return report;
  }

  private Optional<Moment> open() {
    return isReported ? Optional.empty() : Optional.ofNullable(moment);
  }

  private boolean hasHeight(long nanoTime) {
    return !isFlat || nanoTime > flatUntilNanoTime;
  }
}
