package steadypull.exchange;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.IOException;
import java.io.InterruptedIOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;

/**
 * Writes one trip table, row by row as the samples come. Cells are numbers or headers that begin
 * with a lower-case letter, so that no spreadsheet takes one for a formula. One thread.
 */
final class TableWriter {
  /** Samples between two looks at the watch. */
  private static final int SAMPLES_A_LOOK = 10_000;

  private final CsvWriter csv;
  private final Map<Channel, Integer> columns;
  private final ExportChoice choice;
  private final TransferWatch watch;
  private final TimeOrder order;
  private final String[] row;
  private long rowMicros = -1;
  private long count;

  private TableWriter(
      CsvWriter csv,
      List<Channel> channels,
      ExportChoice choice,
      TransferWatch watch,
      int lookAhead) {
    this.csv = csv;
    this.order = new TimeOrder(lookAhead, this::place);
    this.columns = columns(channels.stream().filter(choice::includes).toList());
    this.choice = choice;
    this.watch = watch;
    this.row = new String[columns.size() + 1];
  }

  /**
   * Writes and flushes; leaves {@code out} open.
   *
   * @param lookAhead how many samples wait for an earlier one
   * @return how many samples were written
   * @throws TimeOrder.TooLate if that was not enough
   * @throws InterruptedIOException if the watch has ended it
   */
  static <X extends Exception> long write(
      Writer out,
      List<Channel> channels,
      SampleSource<X> samples,
      ExportChoice choice,
      TransferWatch watch,
      int lookAhead)
      throws IOException, X {
    // The writer below is only flushed: closing it would close what is not ours.
    CsvWriter csv = CsvWriter.builder().lineDelimiter(LineDelimiter.CRLF).build(out);
    TableWriter writer = new TableWriter(csv, channels, choice, watch, lookAhead);
    try {
      writer.writeHeader();
      samples.pourInto(writer::add);
      writer.order.finish();
      writer.finishRow();
      csv.flush();
    } catch (UncheckedIOException e) {
      throw e.getCause() == null ? new IOException(e) : e.getCause();
    }
    return writer.count;
  }

  /** Column numbers from 1: known channels in the order of their table, then the others. */
  private static Map<Channel, Integer> columns(List<Channel> present) {
    Map<Channel, Integer> columns = new LinkedHashMap<>();
    Stream.concat(Channels.all().stream().filter(present::contains), present.stream())
        .distinct()
        .forEach(channel -> columns.put(channel, columns.size() + 1));
    return columns;
  }

  private void writeHeader() {
    row[0] = OwnHeader.TIME;
    columns.forEach((channel, index) -> row[index] = channel.header());
    csv.writeRecord(row);
  }

  private void add(Sample sample) {
    if (!choice.includes(sample.channel())) {
      return;
    }
    if (count++ % SAMPLES_A_LOOK == 0 && !watch.goesOn(count)) {
      throw new UncheckedIOException(new InterruptedIOException("Stopped as asked"));
    }
    order.add(sample);
  }

  private void place(Sample sample) {
    if (sample.timeMicros() != rowMicros) {
      finishRow();
      rowMicros = sample.timeMicros();
      Arrays.fill(row, "");
      row[0] = NumberCell.seconds(rowMicros);
    }
    Integer column = columns.get(sample.channel());
    if (column == null) {
      throw new IllegalArgumentException(
          "Expected samples of " + columns.keySet() + ", found one of " + sample.channel());
    }
    row[column] = NumberCell.text(sample.value());
  }

  private void finishRow() {
    if (rowMicros >= 0) {
      csv.writeRecord(row);
    }
  }
}
