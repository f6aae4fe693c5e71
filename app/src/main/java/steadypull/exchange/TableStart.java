package steadypull.exchange;

import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Optional;

/** When the trip of a table started, and how that is known. */
public sealed interface TableStart {
  /** The moment of time zero. */
  Instant moment();

  /** How far the table's clock was ahead of UTC then; empty if the table has no clock. */
  Optional<ZoneOffset> offset();

  /** The table, or its mapping, tells it. */
  record Told(Instant moment, Optional<ZoneOffset> offset) implements TableStart {}

  /** The table tells a time of day; the day is the last before the file was written. */
  record DayOfFile(Instant moment, Optional<ZoneOffset> offset) implements TableStart {}

  /** The table tells nothing; this is when the file was written. */
  record TimeOfFile(Instant moment) implements TableStart {
    @Override
    public Optional<ZoneOffset> offset() {
      return Optional.empty();
    }
  }
}
