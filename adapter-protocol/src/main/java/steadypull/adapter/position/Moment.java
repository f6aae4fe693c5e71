package steadypull.adapter.position;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.jspecify.annotations.Nullable;

/** The sentences that speak of one moment. Receiver thread only. */
final class Moment {
  private final LocalTime time;
  private final long nanoTime;
  private Sentence.@Nullable FixData fixData;
  private Sentence.@Nullable Minimum minimum;
  private Sentence.Motion track =
      new Sentence.Motion(OptionalDouble.empty(), OptionalDouble.empty());

  /** Begins with the time of its first sentence and when that arrived. */
  Moment(LocalTime time, long nanoTime) {
    this.time = time;
    this.nanoTime = nanoTime;
  }

  boolean isAt(LocalTime other) {
    return time.equals(other);
  }

  /** Where several talkers speak of the same moment, the better fix counts. */
  void add(Sentence.Timed sentence) {
    switch (sentence) {
      case Sentence.FixData added -> fixData = isBetter(added, fixData) ? added : fixData;
      case Sentence.Minimum added -> minimum = isBetter(added, minimum) ? added : minimum;
    }
  }

  private static boolean isBetter(Sentence.Timed added, Sentence.@Nullable Timed present) {
    return present == null || added.quality().compareTo(present.quality()) > 0;
  }

  void add(Sentence.Motion motion) {
    track = motion;
  }

  /** Whether both kinds of timed sentence are here, so that nothing more is to be waited for. */
  boolean isComplete() {
    return fixData != null && minimum != null;
  }

  /**
   * Puts the report together.
   *
   * @param isHeightMeasured false where the receiver says that it is not
   */
  PositionReport report(boolean isHeightMeasured) {
    Optional<Sentence.FixData> data = Optional.ofNullable(fixData);
    Optional<Sentence.Minimum> least = Optional.ofNullable(minimum);
    FixQuality quality =
        data.map(Sentence.Timed::quality)
            .orElse(FixQuality.PRECISE)
            .worse(least.map(Sentence.Timed::quality).orElse(FixQuality.PRECISE));
    Optional<Sentence.Place> place =
        data.flatMap(Sentence.Timed::place).or(() -> least.flatMap(Sentence.Timed::place));
    if (place.isEmpty() || quality == FixQuality.NONE) {
      return new PositionReport.Unfixed(nanoTime);
    }
    Sentence.Motion motion =
        least
            .map(Sentence.Minimum::motion)
            .filter(told -> told.speedKilometresPerHour().isPresent())
            .orElse(track);
    return new PositionReport.Fixed(
        nanoTime,
        place.get().latitudeDegrees(),
        place.get().longitudeDegrees(),
        isHeightMeasured
            ? data.map(Sentence.FixData::altitudeMetres).orElse(OptionalDouble.empty())
            : OptionalDouble.empty(),
        motion.speedKilometresPerHour(),
        motion.courseDegrees(),
        least.flatMap(Sentence.Minimum::date).map(this::instant),
        quality,
        data.map(Sentence.FixData::satellites).orElse(OptionalInt.empty()),
        data.map(Sentence.FixData::horizontalDilution).orElse(OptionalDouble.empty()));
  }

  private Instant instant(LocalDate date) {
    return date.atTime(time).toInstant(ZoneOffset.UTC);
  }
}
