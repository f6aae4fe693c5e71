package steadypull.exchange;

import de.siegmar.fastcsv.reader.CsvRecord;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;

/**
 * Reads the cells of one row after another of a table whose layout is known. One thread, one
 * reading.
 */
final class RowReader {
  /** Takes a value of a row. */
  interface Cells<X extends Exception> {
    /**
     * A cell that is not empty.
     *
     * @param column number of the column in the layout
     * @param value in the channel's unit
     */
    void value(int column, double value) throws X;
  }

  private static final long LONGEST_TRIP_MICROS = 366 * 86_400_000_000L;

  /**
   * Rows that share a time run ahead of it by as many microseconds; more than these are a fault.
   */
  private static final long MOST_REPEATS = 10_000;

  private final Path file;
  private final TableLayout layout;
  private final RowClock clock;
  private final NumberCell numbers;
  private long line;
  private String lastCell = "";
  private long firstMicros;
  private long lastMicros = -1;

  RowReader(Path file, TableLayout layout, Instant fileTime, TableZone zone) {
    this.file = file;
    this.layout = layout;
    this.clock = new RowClock(layout.time(), layout.form().decimal(), fileTime, zone);
    this.numbers = new NumberCell(layout.form().decimal());
  }

  /**
   * Takes the time of a row.
   *
   * @return microseconds since the start of the trip
   */
  long time(CsvRecord row) throws TableException {
    line = row.getStartingLineNumber();
    requireWidth(row);
    String cell = timeCell(row);
    CellPlace.Of place = () -> place(layout.timeIndex(), layout.timeHeader());
    long clockMicros = clock.micros(cell, place);
    if (lastMicros < 0) {
      firstMicros = isTripTime() ? 0 : clockMicros;
    }
    lastMicros = increasing(clockMicros - firstMicros, cell, place);
    lastCell = cell;
    return lastMicros;
  }

  /** Hands over the values of a row whose time was taken. */
  <X extends Exception> void cells(CsvRecord row, Cells<X> taker) throws TableException, X {
    for (int number = 0; number < layout.columns().size(); number++) {
      TableColumn column = layout.columns().get(number);
      String cell = column.index() < row.getFieldCount() ? row.getField(column.index()) : "";
      if (!layout.form().isMissing(cell)) {
        taker.value(number, value(cell, column));
      }
    }
  }

  /** Time of the last row, microseconds since the start of the trip; negative before the first. */
  long lastMicros() {
    return lastMicros;
  }

  /** What is known of the start of the trip; after the first row. */
  TableStart start() {
    return clock.start(firstMicros);
  }

  /** What is worth knowing of how local times were read so far. */
  List<String> clockWords() {
    return clock.words();
  }

  /** Whether the zone mattered so far. */
  boolean isLocal() {
    return clock.isLocal();
  }

  /** Day and time of two fields are read as one text. */
  private String timeCell(CsvRecord row) {
    String time = row.getField(layout.timeIndex());
    return layout.dateIndex().isEmpty()
        ? time
        : row.getField(layout.dateIndex().getAsInt()).strip() + " " + time.strip();
  }

  private boolean isTripTime() {
    return layout.time() instanceof TimeForm.Counted counted
        && counted.zero() == TimeForm.Zero.TRIP;
  }

  private long increasing(long micros, String cell, CellPlace.Of place) throws TableException {
    if (micros > lastMicros && micros <= LONGEST_TRIP_MICROS) {
      return micros;
    }
    if (layout.mayRepeatTime() && micros >= lastMicros - MOST_REPEATS && micros <= lastMicros) {
      return lastMicros + 1;
    }
    if (micros > LONGEST_TRIP_MICROS) {
      throw place.here().refusal("at most a year after the first row", CellPlace.quoted(cell));
    }
    throw place
        .here()
        .refusal(
            "a time after the row before, " + NumberCell.seconds(lastMicros) + " s",
            CellPlace.quoted(cell),
            micros == lastMicros ? sharedAdvice(cell) : "");
  }

  private String sharedAdvice(String cell) {
    String limit =
        cell.strip().equals(lastCell.strip())
            ? ""
            : " Times are kept to one microsecond, no finer.";
    return layout.isMapped()
        ? limit + " If rows share a time, say repeats = true under [time]."
        : limit;
  }

  private void requireWidth(CsvRecord row) throws TableException {
    int found = row.getFieldCount();
    boolean isShort =
        found < layout.width()
            && found > layout.timeIndex()
            && found > layout.dateIndex().orElse(0);
    if (found == layout.width() || (isShort && layout.form().isRagged())) {
      return;
    }
    throw CellPlace.ofLine(file, line)
        .refusal(
            layout.width() + " fields as in the header",
            found + " fields",
            isShort && layout.isMapped()
                ? " If rows may end early, say ragged = true in the mapping."
                : "");
  }

  private double value(String cell, TableColumn column) throws TableException {
    CellPlace.Of place = () -> place(column.index(), column.header());
    double value = column.conversion().apply(numbers.value(cell, place));
    if (!Double.isFinite(value)) {
      throw place.here().refusal("a number that fits its unit", CellPlace.quoted(cell));
    }
    return value;
  }

  private CellPlace place(int index, String header) {
    return new CellPlace(file, line, index + 1, header);
  }
}
