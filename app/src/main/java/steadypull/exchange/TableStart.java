package steadypull.exchange;

import java.time.Instant;

/** When the trip of a table started, and how that is known. */
public sealed interface TableStart {
  /** The moment of time zero. */
  Instant moment();

  /** The table, or its mapping, tells it. */
  record Told(Instant moment) implements TableStart {}

  /** The table tells a time of day; the day is the last before the file was written. */
  record DayOfFile(Instant moment) implements TableStart {}

  /** The table tells nothing; this is when the file was written. */
  record TimeOfFile(Instant moment) implements TableStart {}
}
