package steadypull.exchange;

import de.siegmar.fastcsv.reader.CloseableIterator;
import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import de.siegmar.fastcsv.reader.CsvRecordHandler;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.Optional;

/**
 * The records of one table, one after another, never more than one in memory. Bytes that are not
 * text arrive as the replacement character, which no used cell may hold, so that they are refused
 * at their place. Every fault comes as a refusal with its line. One thread.
 */
final class TableRows implements AutoCloseable {
  /** No field of a table is longer; more is a missing quote or an attack on memory. */
  private static final int LONGEST_FIELD = 16_384;

  /** No table of the trade is wider. */
  static final int MOST_FIELDS = 4_096;

  private static final int LONGEST_RECORD = 1 << 20;

  private final Path file;
  private final TableForm form;
  private final TableBytes bytes;
  private final CloseableIterator<CsvRecord> records;
  private long line = 1;

  private TableRows(
      Path file, TableForm form, TableBytes bytes, CloseableIterator<CsvRecord> records) {
    this.file = file;
    this.form = form;
    this.bytes = bytes;
    this.records = records;
  }

  /** Opens a table at its header. */
  static TableRows open(Path file, TableForm form) throws TableException {
    try {
      TableBytes bytes = TableBytes.open(file);
      try {
        return new TableRows(file, form, bytes, records(bytes, form));
      } catch (IOException | TableException e) {
        bytes.close();
        throw e;
      }
    } catch (IOException e) {
      throw FileFault.unreadable(file, FileFault.whileReading(e));
    }
  }

  private static CloseableIterator<CsvRecord> records(TableBytes bytes, TableForm form)
      throws IOException, TableException {
    CsvRecordHandler handler =
        CsvRecordHandler.of(
            limits ->
                limits
                    .maxFields(MOST_FIELDS)
                    .maxFieldSize(LONGEST_FIELD)
                    .maxRecordSize(LONGEST_RECORD));
    CsvReader<CsvRecord> reader =
        CsvReader.builder()
            .fieldSeparator(form.separator())
            .maxBufferSize(LONGEST_FIELD)
            .allowExtraFields(true)
            .allowMissingFields(true)
            .allowExtraCharsAfterClosingQuote(false)
            .build(handler, bytes.text(form.encoding()));
    try {
      reader.skipLines(form.linesBefore());
    } catch (CsvParseException tooLong) {
      throw new IOException("a line before its header that is too long", tooLong);
    }
    return reader.iterator();
  }

  /** The next record; empty at the end. Lines without any character are passed over. */
  Optional<CsvRecord> next() throws TableException {
    try {
      if (!records.hasNext()) {
        return Optional.empty();
      }
      CsvRecord record = records.next();
      line = record.getStartingLineNumber();
      return Optional.of(record);
    } catch (UncheckedIOException e) {
      throw brokenOff(e.getCause() == null ? new IOException(e) : e.getCause());
    } catch (CsvParseException e) {
      throw e.getCause() instanceof IOException broken ? brokenOff(broken) : notATable();
    }
  }

  /** First line of the last record, from 1. */
  long line() {
    return line;
  }

  /** Bytes of the file that were read. */
  long bytesRead() {
    return bytes.bytesRead();
  }

  @Override
  public void close() throws TableException {
    try {
      records.close();
      bytes.close();
    } catch (IOException e) {
      throw brokenOff(e);
    }
  }

  private TableException brokenOff(IOException cause) {
    return new TableException(
        "%s, after line %d: expected more of the table, found %s. Nothing was taken; fetch the file anew."
            .formatted(CellPlace.shown(file), line, FileFault.whileReading(cause)),
        cause);
  }

  private TableException notATable() throws TableException {
    try {
      return new RecordFault(file, form, MOST_FIELDS, LONGEST_FIELD).refusal(line);
    } catch (IOException e) {
      return brokenOff(e);
    }
  }
}
