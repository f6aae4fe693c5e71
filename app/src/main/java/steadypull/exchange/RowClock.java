package steadypull.exchange;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.time.temporal.TemporalAccessor;
import java.util.List;
import java.util.Optional;

/**
 * Turns the time cells of one table, in their order, into moments: microseconds since the first row
 * (clocks), since 1970 (epochs) or as counted. One thread.
 *
 * <p>A time of day that goes back by more than twelve hours has passed midnight; one that goes back
 * by less is a clock that was set, which nobody can tell from a damaged table.
 *
 * <p>Local times go by the rules of their zone. Where clocks are turned back an hour exists twice:
 * its first pass is meant until the clock goes back. An hour that clocks leave out is refused.
 */
final class RowClock {
  /** A trip lasts at most a year; a greater time is a clock's, not a trip's. */
  private static final double LONGEST_TRIP_SECONDS = 366 * 86_400.0;

  /** The year 2920; milliseconds that were taken for seconds lie beyond. */
  private static final double LATEST_EPOCH_SECONDS = 3e10;

  private static final int MICROS_TENS = 6;
  private static final long DAY_MICROS = ChronoUnit.DAYS.getDuration().toNanos() / 1000;

  private final TimeForm form;
  private final NumberCell numbers;
  private final Instant fileTime;
  private final LocalClock local;
  private Optional<LocalDateTime> lastOfDay = Optional.empty();
  private boolean isDayOfFile;
  private Optional<ZoneOffset> firstOffset = Optional.empty();

  /**
   * A clock for one reading of a table.
   *
   * @param fileTime when the file was last written; tells the day where nothing else does
   * @param zone where the table's clock was
   */
  RowClock(TimeForm form, char decimal, Instant fileTime, TableZone zone) {
    this.form = form;
    this.numbers = new NumberCell(decimal);
    this.fileTime = fileTime;
    this.local = new LocalClock(form, zone);
  }

  /** What is worth knowing of how local times were read so far. */
  List<String> words() {
    return local.words();
  }

  /** Whether a local time was read, and so the zone mattered. */
  boolean isLocal() {
    return local.isUsed();
  }

  /** What is known of the start of the trip once the first row was read. */
  TableStart start(long firstMicros) {
    boolean isMoment =
        switch (form) {
          case TimeForm.Counted counted -> counted.zero() == TimeForm.Zero.EPOCH;
          case TimeForm.Clock _ -> true;
        };
    if (!isMoment) {
      return new TableStart.TimeOfFile(fileTime);
    }
    Instant first = Instant.EPOCH.plus(firstMicros, ChronoUnit.MICROS);
    return isDayOfFile
        ? new TableStart.DayOfFile(first, firstOffset)
        : new TableStart.Told(first, firstOffset);
  }

  /** The moment that a cell tells, microseconds since the zero of its form. */
  long micros(String cell, CellPlace.Of place) throws TableException {
    return switch (form) {
      case TimeForm.Counted counted -> counted(counted, cell, place);
      case TimeForm.Clock clock -> moment(clock, cell.strip(), place);
    };
  }

  private long counted(TimeForm.Counted counted, String cell, CellPlace.Of place)
      throws TableException {
    double seconds = numbers.value(cell, place) * Math.pow(10, counted.tens() - MICROS_TENS);
    boolean isTripTime = counted.zero() == TimeForm.Zero.TRIP;
    if (seconds < 0) {
      throw place
          .here()
          .refusal(
              isTripTime ? "seconds since the start of the trip, 0 or more" : "a time of 0 or more",
              CellPlace.whatIs(cell.strip()));
    }
    if (isTripTime && seconds > LONGEST_TRIP_SECONDS) {
      throw place
          .here()
          .refusal(
              "seconds since the start of the trip, at most a year",
              CellPlace.whatIs(cell.strip()),
              " A time of the clock must be turned into seconds since the start, or told by a"
                  + " mapping (--map).");
    }
    if (seconds > LATEST_EPOCH_SECONDS) {
      throw place.here().refusal("a time before the year 2900", CellPlace.whatIs(cell.strip()));
    }
    return numbers.scan().scaled(counted.tens());
  }

  private long moment(TimeForm.Clock clock, String text, CellPlace.Of place) throws TableException {
    try {
      TemporalAccessor found =
          clock
              .reader()
              .parseBest(
                  HalfOfDay.plain(text, clock.pattern()),
                  OffsetDateTime::from,
                  LocalDateTime::from,
                  LocalTime::from);
      return switch (found) {
        case OffsetDateTime moment -> micros(moment);
        case LocalDateTime time -> micros(local.moment(time, place));
        default -> micros(local.moment(ofDay(clock, LocalTime.from(found), place), place));
      };
    } catch (DateTimeException | ArithmeticException e) {
      throw place.here().refusal("a time of the form " + clock.pattern(), CellPlace.whatIs(text));
    }
  }

  private LocalDateTime ofDay(TimeForm.Clock clock, LocalTime time, CellPlace.Of place)
      throws TableException {
    LocalDateTime last = lastOfDay.orElseGet(() -> dayOne(clock, time).atTime(time));
    LocalDateTime next = last.toLocalDate().atTime(time);
    if (ChronoUnit.MICROS.between(next, last) >= DAY_MICROS / 2) {
      next = next.plusDays(1);
    } else if (next.isBefore(last) && !local.isTurnedBack(next)) {
      throw place
          .here()
          .refusal(
              "a time after the row before, " + last.toLocalTime(),
              CellPlace.quoted(time.toString()),
              " Only midnight may turn a clock back.");
    }
    lastOfDay = Optional.of(next);
    return next;
  }

  /** The last day on which that time came before the file was written, if nobody tells the day. */
  private LocalDate dayOne(TimeForm.Clock clock, LocalTime time) {
    if (clock.date().isPresent()) {
      return clock.date().get();
    }
    isDayOfFile = true;
    LocalDateTime written = LocalDateTime.ofInstant(fileTime, local.zone());
    LocalDate day = written.toLocalDate();
    return time.isAfter(written.toLocalTime()) ? day.minusDays(1) : day;
  }

  private long micros(OffsetDateTime moment) {
    firstOffset = firstOffset.or(() -> Optional.of(moment.getOffset()));
    return ChronoUnit.MICROS.between(Instant.EPOCH, moment.toInstant());
  }
}
