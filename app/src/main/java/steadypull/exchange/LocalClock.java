package steadypull.exchange;

import java.time.Duration;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.zone.ZoneOffsetTransition;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Turns local times, in their order, into moments by the rules of a zone. Where clocks are turned
 * back a time exists twice: the first is meant until the clock goes back. One thread, one reading.
 */
final class LocalClock {
  /** Rows that share a time may come some milliseconds early; that is no clock that goes back. */
  private static final Duration LEAST_TURN = Duration.ofSeconds(1);

  private final ZoneId zone;
  private final boolean isAssumed;
  private boolean isUsed;
  private @Nullable OffsetDateTime last;
  private Optional<ZoneOffsetTransition> twice = Optional.empty();

  LocalClock(TimeForm form, TableZone zone) {
    Optional<ZoneId> mapped =
        form instanceof TimeForm.Clock clock ? clock.zone() : Optional.empty();
    Optional<ZoneId> told = zone.said().or(() -> mapped);
    this.zone = told.orElse(zone.here());
    this.isAssumed = told.isEmpty();
  }

  ZoneId zone() {
    return zone;
  }

  /** Whether there was a local time. */
  boolean isUsed() {
    return isUsed;
  }

  /** Whether a time that lies before the last one is its second pass. */
  boolean isTurnedBack(LocalDateTime time) {
    OffsetDateTime before = last;
    List<ZoneOffset> offsets = zone.getRules().getValidOffsets(time);
    return offsets.size() > 1 && before != null && time.atOffset(offsets.getLast()).isAfter(before);
  }

  /**
   * The moment that is meant.
   *
   * @throws TableException if clocks leave that time out
   */
  OffsetDateTime moment(LocalDateTime time, CellPlace.Of place) throws TableException {
    List<ZoneOffset> offsets = zone.getRules().getValidOffsets(time);
    if (offsets.isEmpty()) {
      throw place
          .here()
          .refusal(
              "a time that exists in " + zone,
              CellPlace.quoted(time.toString()) + ", which clocks leave out there",
              " Say where its clock was: --zone, such as +01:00, or zone under [time] in the"
                  + " mapping.");
    }
    isUsed = true;
    OffsetDateTime moment = time.atOffset(offsets.getFirst());
    if (offsets.size() > 1) {
      twice = twice.or(() -> Optional.ofNullable(zone.getRules().getTransition(time)));
      OffsetDateTime before = last;
      if (before != null && Duration.between(moment, before).compareTo(LEAST_TURN) >= 0) {
        moment = time.atOffset(offsets.getLast());
      }
    }
    last = moment;
    return moment;
  }

  /** Which zone was taken if nobody said, and which times exist twice. */
  List<String> words() {
    List<String> words = new ArrayList<>();
    if (isUsed && isAssumed) {
      words.add(
          "Nothing tells where its clock was; taken is this machine's zone, %s. If that is wrong: --zone, or zone under [time] in a mapping."
              .formatted(zone));
    }
    twice.ifPresent(
        turned ->
            words.add(
                "Its times from %s to %s exist twice in %s; the first pass is taken until its clock goes back. If that is wrong: --zone with an offset, such as %s."
                    .formatted(
                        turned.getDateTimeAfter(),
                        turned.getDateTimeBefore(),
                        zone,
                        turned.getOffsetAfter())));
    return words;
  }
}
