package steadypull.exchange;

import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;
import steadypull.channel.Channel;

/**
 * How to read tables of one foreign kind; written as TOML, see {@link #parse}. Immutable.
 *
 * @param timeColumn header of the column that tells the time
 * @param dateColumn header of the column that tells the day; empty: the time tells it, or nothing
 * @param mayRepeatTime whether rows may share a time; the later ones are taken one microsecond on
 * @param columns what the other columns are, by their headers
 * @param round rows from one fresh value of a held column to the next; empty: to be inferred
 */
record TableMapping(
    TableForm form,
    TimeForm time,
    String timeColumn,
    Optional<String> dateColumn,
    boolean mayRepeatTime,
    Map<String, Use> columns,
    OptionalInt round) {
  TableMapping {
    columns = Map.copyOf(columns);
  }

  /**
   * Reads a mapping.
   *
   * @param toml its text
   * @param name what messages call it
   * @throws TableException naming every fault with its line and column
   */
  static TableMapping parse(String toml, String name) throws TableException {
    return new MappingReader(toml, name).mapping();
  }

  /** The same for a file of another day. */
  TableMapping withoutDay() {
    return switch (time) {
      case TimeForm.Counted _ -> this;
      case TimeForm.Clock clock ->
          new TableMapping(
              form, clock.withoutDate(), timeColumn, dateColumn, mayRepeatTime, columns, round);
    };
  }

  /** The same for a table whose header stands behind so many other lines. */
  TableMapping after(int lines) {
    return new TableMapping(
        form.after(lines), time, timeColumn, dateColumn, mayRepeatTime, columns, round);
  }

  /** Every header that it names. */
  Set<String> headers() {
    Set<String> headers = new TreeSet<>(columns.keySet());
    headers.add(timeColumn);
    dateColumn.ifPresent(headers::add);
    return headers;
  }

  /** What a column is. */
  sealed interface Use {
    /**
     * It feeds a channel.
     *
     * @param written id of the channel, and the unit in which the column has it
     * @param isHeld whether values are repeated until the next one was polled
     */
    record Feeds(Channel written, boolean isHeld) implements Use {}

    /** It is passed over. */
    record Ignored() implements Use {}
  }
}
