package steadypull.exchange;

import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import steadypull.channel.Channel;
import steadypull.channel.Sample;

/**
 * A table that is understood up to its first row and whose samples can be read, more than once,
 * without holding them in memory. What is read must not change meanwhile. One thread.
 */
public final class IncomingTable {
  /** Rows between two looks at the watch. */
  private static final int ROWS_A_LOOK = 2_000;

  private final TableSource source;
  private final TableStart start;
  private final List<Freshness> freshness;

  private List<String> clockWords = List.of();
  private boolean isLocal;

  private IncomingTable(TableSource source, TableStart start) throws TableException {
    this.source = source;
    this.start = start;
    this.freshness = source.freshness();
  }

  /** Opens our own form, or, with a mapping, a foreign one, and looks at its first row. */
  static IncomingTable open(Path file, Optional<TableMapping> foreign, TableZone zone)
      throws TableException {
    Optional<TableMapping> mapping =
        foreign.isPresent()
            ? Optional.of(foreign.get().after(HeaderLine.before(file, foreign.get())))
            : foreign;
    try (TableRows rows =
        TableRows.open(file, mapping.map(TableMapping::form).orElse(TableForm.OWN))) {
      CsvRecord header =
          rows.next()
              .orElseThrow(
                  () ->
                      CellPlace.ofLine(file, 1)
                          .refusal("a header line " + OwnHeader.TIME + ",...", "an empty file"));
      TableLayout layout = layout(file, rows.line(), header.getFields(), mapping);
      CsvRecord first =
          rows.next()
              .orElseThrow(
                  () ->
                      CellPlace.ofLine(file, rows.line())
                          .refusal("at least one row", "the header only"));
      TableSource source = new TableSource(file, layout, fileTime(file), zone);
      RowReader reader = source.reader();
      reader.time(first);
      return new IncomingTable(source, reader.start());
    }
  }

  private static TableLayout layout(
      Path file, long line, List<String> cells, Optional<TableMapping> mapping)
      throws TableException {
    return mapping.isPresent()
        ? new MappedHeader(file, line, cells, mapping.get()).layout()
        : new OwnHeader(file, line, cells).layout();
  }

  private static Instant fileTime(Path file) throws TableException {
    try {
      return Files.getLastModifiedTime(file).toInstant();
    } catch (IOException e) {
      throw FileFault.unreadable(file, FileFault.whileReading(e));
    }
  }

  /** Bytes of the file, at least 1; what a watch is told goes up to it. */
  public long bytes() throws TableException {
    try {
      return Math.max(1, Files.size(source.file()));
    } catch (IOException e) {
      throw FileFault.unreadable(source.file(), FileFault.whileReading(e));
    }
  }

  /** The columns that are taken, in the order of the table, without the time. */
  public List<Channel> channels() {
    return source.layout().columns().stream().map(TableColumn::channel).toList();
  }

  /** What is converted on the way, as {@code header to unit}. */
  public List<String> conversions() {
    return source.layout().columns().stream()
        .filter(column -> !column.conversion().isIdentity())
        .map(column -> column.header() + " to " + column.channel().unit())
        .toList();
  }

  /** When the trip started. */
  public TableStart start() {
    return start;
  }

  /**
   * How fresh values of held columns are told, a line each for columns alike; empty if none is
   * held.
   */
  public List<String> heldWords() {
    return HeldWords.of(source.layout().heldColumns(), freshness);
  }

  /** Whether a channel has a sample in this table; reads up to the first. */
  public boolean hasSampleOf(Channel channel) throws TableException {
    if (!channels().contains(channel)) {
      return false;
    }
    try {
      read(
          sample -> {
            if (sample.channel().equals(channel)) {
              throw new Found();
            }
          },
          TransferWatch.NONE);
      return false;
    } catch (Found found) {
      return true;
    }
  }

  /** Ends a reading that has found what it looked for. */
  private static final class Found extends Exception {}

  /**
   * Hands over every sample, in time order; at one time in the order of the columns.
   *
   * @return the time of the last row, microseconds since the start of the trip
   * @throws TableException if the table is faulty or the watch has ended it
   */
  public <X extends Exception> long read(SampleSink<X> sink, TransferWatch watch)
      throws TableException, X {
    refuseWithoutColumns();
    HeldValues held = new HeldValues(freshness);
    boolean[] hasValue = new boolean[1];
    int[] numbers = source.heldNumbers();
    RowReader reader = source.reader();
    try (TableRows rows = source.open()) {
      long count = 0;
      for (Optional<CsvRecord> row = rows.next(); row.isPresent(); row = rows.next()) {
        if (count % ROWS_A_LOOK == 0) {
          look(rows, watch);
        }
        long number = count++;
        long micros = reader.time(row.get());
        reader.cells(
            row.get(),
            (column, value) -> {
              hasValue[0] = true;
              if (numbers[column] < 0 || held.isFresh(numbers[column], number, value)) {
                sink.accept(new Sample(source.channel(column), micros, value));
              }
            });
      }
      look(rows, watch);
    }
    if (!hasValue[0]) {
      throw withoutValues("empty cells only");
    }
    clockWords = reader.clockWords();
    isLocal = reader.isLocal();
    return reader.lastMicros();
  }

  /** What is worth knowing of how the last reading took local times; empty before. */
  public List<String> clockWords() {
    return List.copyOf(clockWords);
  }

  /** Whether the last reading took local times, so that their zone mattered. */
  public boolean isLocal() {
    return isLocal;
  }

  /** The header as it stands in the file: what tables of one kind have in common. */
  public String headerLine() throws TableException {
    int before = source.layout().form().linesBefore();
    return before == 0 ? HeaderLine.of(source.file()) : HeaderLine.first(source.file()).get(before);
  }

  private void refuseWithoutColumns() throws TableException {
    if (source.layout().columns().isEmpty()) {
      throw withoutValues("no column but the time that is taken");
    }
  }

  private TableException withoutValues(String found) {
    return new TableException(
        "%s: expected at least one value, found %s. %s Nothing was taken."
            .formatted(
                CellPlace.shown(source.file()),
                found,
                source.layout().isMapped()
                    ? "Look which columns the mapping ignores and which cells it says are missing."
                    : "Write the table anew with samples."));
  }

  private void look(TableRows rows, TransferWatch watch) throws TableException {
    if (!watch.goesOn(rows.bytesRead())) {
      throw new TableException(
          "Stopped reading %s at line %d, as asked. Nothing was taken."
              .formatted(CellPlace.shown(source.file()), rows.line()));
    }
  }
}
