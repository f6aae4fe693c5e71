package steadypull.exchange;

import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Optional;

/** How a table tells the time of a row. */
sealed interface TimeForm {
  /**
   * A number that counts.
   *
   * @param tens power of ten that makes microseconds of it: 6 for seconds, 3 for milliseconds
   */
  record Counted(int tens, Zero zero) implements TimeForm {}

  /** What the zero of a counter is. */
  enum Zero {
    /** The start of the trip. */
    TRIP,
    /** Nothing: the trip starts with the first row. */
    FIRST_ROW,
    /** Midnight of 1 January 1970, UTC. */
    EPOCH
  }

  /**
   * Text of a clock or a calendar; the trip starts with the first row.
   *
   * @param pattern as the mapping says it
   * @param reader reads the pattern; gives a moment, a local date and time, or a time of day
   * @param date day of the first row, if the text tells none and the mapping does
   * @param zone where the clock is, if the text does not tell
   */
  record Clock(
      String pattern, DateTimeFormatter reader, Optional<LocalDate> date, Optional<ZoneId> zone)
      implements TimeForm {
    Clock withoutDate() {
      return new Clock(pattern, reader, Optional.empty(), zone);
    }
  }

  /** Our own: seconds since the start of the trip. */
  TimeForm OWN = new Counted(6, Zero.TRIP);
}
