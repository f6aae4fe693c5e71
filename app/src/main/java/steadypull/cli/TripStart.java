package steadypull.cli;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import steadypull.exchange.TableStart;

/**
 * When an imported trip started.
 *
 * @param offset of the local time from UTC; empty: nobody knows
 * @param words what to tell the user if that was not told; empty otherwise
 */
record TripStart(Instant moment, Optional<ZoneOffset> offset, Optional<String> words) {
  /** Files from before bear the zero of a clock or of a file system, not a time. Our choice. */
  private static final Instant EARLIEST_FILE = Instant.parse("1990-01-01T00:00:00Z");

  static TripStart of(Optional<OffsetDateTime> said, TableStart told, Instant now) {
    if (said.isPresent()) {
      return new TripStart(
          said.get().toInstant(), Optional.of(said.get().getOffset()), Optional.empty());
    }
    return switch (told) {
      case TableStart.Told(Instant moment, Optional<ZoneOffset> offset) ->
          new TripStart(moment, offset, Optional.empty());
      case TableStart.DayOfFile(Instant moment, Optional<ZoneOffset> offset) ->
          assumed(moment, offset, "tells no day; the file's time gives");
      case TableStart.TimeOfFile(Instant moment) ->
          moment.isAfter(now) || moment.isBefore(EARLIEST_FILE)
              ? assumed(
                  now,
                  told.offset(),
                  "does not tell when it started, nor does the file's time; taken is")
              : assumed(
                  moment, told.offset(), "does not tell when it started; the file's time gives");
    };
  }

  private static TripStart assumed(Instant moment, Optional<ZoneOffset> offset, String why) {
    return new TripStart(
        moment,
        offset,
        Optional.of(
            "The table %s %s. If that is wrong: --start."
                .formatted(why, moment.truncatedTo(ChronoUnit.SECONDS))));
  }
}
