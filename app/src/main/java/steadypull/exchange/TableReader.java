package steadypull.exchange;

import de.siegmar.fastcsv.reader.CloseableIterator;
import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PushbackInputStream;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import steadypull.channel.Channel;
import steadypull.channel.Sample;

/**
 * Reads one trip table. Bytes that are not UTF-8 arrive as the replacement character, which no cell
 * of a table may hold, so that they are refused at their place.
 */
final class TableReader {
  /** No field of a table is longer; more is a missing quote or an attack on memory. */
  private static final int LONGEST_FIELD = 16_384;

  /** U+FEFF in UTF-8 (RFC 3629, section 6). */
  private static final byte[] BYTE_ORDER_MARK = {(byte) 0xEF, (byte) 0xBB, (byte) 0xBF};

  private final Path file;
  private final List<Sample> samples = new ArrayList<>();
  private long lastLine;
  private long lastMicros = -1;

  TableReader(Path file) {
    this.file = file;
  }

  ImportedTable read() throws TableException {
    if (Files.isDirectory(file)) {
      throw new TableException(
          "Could not read %s: expected a file, found a folder.".formatted(file));
    }
    try (CsvReader<CsvRecord> reader = open();
        CloseableIterator<CsvRecord> records = reader.iterator()) {
      return read(records);
    } catch (NoSuchFileException e) {
      throw new TableException(
          "Could not read %s: expected a trip table, found no file of that name. Check the path."
              .formatted(file),
          e);
    } catch (IOException e) {
      throw unreadable(e);
    } catch (UncheckedIOException e) {
      throw unreadable(e);
    } catch (CsvParseException e) {
      throw notCsv(e);
    }
  }

  private CsvReader<CsvRecord> open() throws IOException {
    return CsvReader.builder()
        .maxBufferSize(LONGEST_FIELD)
        .allowExtraFields(true)
        .allowMissingFields(true)
        .allowExtraCharsAfterClosingQuote(false)
        .ofCsvRecord(text());
  }

  /** The text behind a byte-order mark, if there is one; marks of other encodings are refused. */
  private Reader text() throws IOException {
    PushbackInputStream bytes =
        new PushbackInputStream(
            new BufferedInputStream(Files.newInputStream(file)), BYTE_ORDER_MARK.length);
    byte[] start = bytes.readNBytes(BYTE_ORDER_MARK.length);
    if (!Arrays.equals(start, BYTE_ORDER_MARK)) {
      bytes.unread(start);
    }
    return new InputStreamReader(bytes, StandardCharsets.UTF_8);
  }

  private ImportedTable read(CloseableIterator<CsvRecord> records) throws TableException {
    if (!records.hasNext()) {
      throw CellPlace.ofLine(file, 1)
          .refusal("a header line " + TableColumn.TIME + ",...", "an empty file");
    }
    CsvRecord header = next(records);
    List<TableColumn> columns = TableColumn.ofHeaderLine(file, lastLine, header.getFields());
    while (records.hasNext()) {
      readRow(next(records), columns);
    }
    if (lastMicros < 0) {
      throw CellPlace.ofLine(file, lastLine).refusal("at least one row", "the header only");
    }
    return table(columns);
  }

  private CsvRecord next(CloseableIterator<CsvRecord> records) {
    CsvRecord record = records.next();
    lastLine = record.getStartingLineNumber();
    return record;
  }

  private void readRow(CsvRecord row, List<TableColumn> columns) throws TableException {
    int expected = columns.size() + 1;
    if (row.getFieldCount() != expected) {
      throw CellPlace.ofLine(file, lastLine)
          .refusal(expected + " fields as in the header", row.getFieldCount() + " fields");
    }
    lastMicros = time(row.getField(0));
    for (int index = 1; index < expected; index++) {
      readCell(row.getField(index), index, columns.get(index - 1));
    }
  }

  private long time(String cell) throws TableException {
    CellPlace place = new CellPlace(file, lastLine, 1, TableColumn.TIME);
    long micros = NumberCell.micros(cell, place);
    if (micros <= lastMicros) {
      throw place.refusal(
          "a time after the row before, " + NumberCell.seconds(lastMicros) + " s",
          CellPlace.quoted(cell));
    }
    return micros;
  }

  private void readCell(String cell, int index, TableColumn column) throws TableException {
    if (cell.isBlank()) {
      return;
    }
    CellPlace place = new CellPlace(file, lastLine, index + 1, column.header());
    double value = column.conversion().apply(NumberCell.value(cell, place));
    if (!Double.isFinite(value)) {
      throw place.refusal("a number that fits its unit", CellPlace.quoted(cell));
    }
    samples.add(new Sample(column.channel(), lastMicros, value));
  }

  private ImportedTable table(List<TableColumn> columns) {
    List<Channel> channels = columns.stream().map(TableColumn::channel).toList();
    List<String> conversions =
        columns.stream()
            .filter(column -> !column.conversion().isIdentity())
            .map(TableColumn::header)
            .toList();
    return new ImportedTable(channels, samples, lastMicros, conversions);
  }

  private TableException unreadable(Exception cause) {
    return new TableException(
        "Could not read %s: expected a readable file, found %s. Nothing was imported; check the path and the rights."
            .formatted(file, cause.getMessage()),
        cause);
  }

  private TableException notCsv(CsvParseException cause) {
    Throwable deepest = cause.getCause() == null ? cause : cause.getCause();
    return new TableException(
        "%s, in the record after line %d: expected comma-separated fields of at most %d characters, found a fault: %s. Look for a missing quote. Nothing was imported."
            .formatted(file, lastLine, LONGEST_FIELD, deepest.getMessage()),
        cause);
  }
}
