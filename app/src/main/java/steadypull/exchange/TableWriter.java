package steadypull.exchange;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;

/**
 * Writes one trip table. Cells are numbers or headers that begin with a lower-case letter, so that
 * no spreadsheet takes one for a formula. One thread.
 */
final class TableWriter {
  private final CsvWriter csv;
  private final Map<Channel, Integer> columns;
  private final String[] row;

  private TableWriter(CsvWriter csv, Map<Channel, Integer> columns) {
    this.csv = csv;
    this.columns = columns;
    this.row = new String[columns.size() + 1];
  }

  /** Writes and flushes; leaves {@code out} open. */
  static void write(Writer out, Iterable<Sample> samples, ExportChoice choice) throws IOException {
    List<Sample> chosen = new ArrayList<>();
    samples.forEach(
        sample -> {
          if (choice.includes(sample.channel())) {
            chosen.add(sample);
          }
        });
    chosen.sort(Comparator.comparingLong(Sample::timeMicros));
    write(out, chosen);
  }

  private static void write(Writer out, List<Sample> inTimeOrder) throws IOException {
    // The writer below is only flushed: closing it would close what is not ours.
    CsvWriter csv = CsvWriter.builder().lineDelimiter(LineDelimiter.CRLF).build(out);
    try {
      Map<Channel, Integer> columns = columns(inTimeOrder);
      TableWriter writer = new TableWriter(csv, columns);
      writer.writeHeader();
      writer.writeRows(oneValueAtATime(inTimeOrder));
      csv.flush();
    } catch (UncheckedIOException e) {
      throw new IOException(e.getMessage(), e);
    }
  }

  /** Column numbers from 1: known channels in the order of their table, then the others. */
  private static Map<Channel, Integer> columns(List<Sample> samples) {
    Set<Channel> present = new LinkedHashSet<>();
    samples.forEach(sample -> present.add(sample.channel()));
    Map<Channel, Integer> columns = new LinkedHashMap<>();
    for (Channel known : Channels.all()) {
      if (present.contains(known)) {
        columns.put(known, columns.size() + 1);
      }
    }
    for (Channel channel : present) {
      columns.putIfAbsent(channel, columns.size() + 1);
    }
    return columns;
  }

  /** Moves a second sample of a channel in one microsecond to the next free microsecond. */
  private static List<Sample> oneValueAtATime(List<Sample> inTimeOrder) {
    Map<Channel, Long> lastTimes = new HashMap<>();
    List<Sample> moved = new ArrayList<>(inTimeOrder.size());
    for (Sample sample : inTimeOrder) {
      long free = lastTimes.getOrDefault(sample.channel(), -1L) + 1;
      long time = Math.max(sample.timeMicros(), free);
      lastTimes.put(sample.channel(), time);
      moved.add(
          time == sample.timeMicros()
              ? sample
              : new Sample(sample.channel(), time, sample.value()));
    }
    moved.sort(Comparator.comparingLong(Sample::timeMicros));
    return moved;
  }

  private void writeHeader() {
    row[0] = TableColumn.TIME;
    columns.forEach((channel, index) -> row[index] = channel.header());
    csv.writeRecord(row);
  }

  private void writeRows(List<Sample> samples) {
    long time = -1;
    for (Sample sample : samples) {
      if (sample.timeMicros() != time) {
        finishRow(time);
        time = sample.timeMicros();
        Arrays.fill(row, "");
        row[0] = NumberCell.seconds(time);
      }
      row[columns.getOrDefault(sample.channel(), 0)] = NumberCell.text(sample.value());
    }
    finishRow(time);
  }

  private void finishRow(long time) {
    if (time >= 0) {
      csv.writeRecord(row);
    }
  }
}
