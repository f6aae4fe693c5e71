package steadypull.exchange;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.IOException;
import java.io.Reader;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** The first lines of a table as they stand in the file, one of which is its header. */
final class HeaderLine {
  private static final int LONGEST = 100_000;

  /** Whatever a logger says of itself and the drive before its table. Our choice. */
  private static final int MOST_LINES = 100;

  private static final int MOST_LETTERS = 1 << 20;

  private HeaderLine() {}

  /** The very first line. */
  static String of(Path file) throws TableException {
    return first(file, 1, Optional.empty()).getFirst();
  }

  /** The first lines, in UTF-8 or UTF-16 as the file's first bytes tell. */
  static List<String> first(Path file) throws TableException {
    return first(file, MOST_LINES, Optional.empty());
  }

  /**
   * How many lines stand before the header of a table: the line in which most of what the mapping
   * names is found, the time among it. None if there is no such line, so that the first line is the
   * one that is found faulty.
   */
  static int before(Path file, TableMapping mapping) throws TableException {
    Set<String> wanted = mapping.headers();
    List<String> lines = first(file, MOST_LINES, Optional.of(mapping.form().encoding()));
    int header = 0;
    int most = 0;
    for (int line = 0; line < lines.size(); line++) {
      Set<String> found = new HashSet<>(cells(lines.get(line), mapping.form()));
      found.retainAll(wanted);
      if (found.contains(mapping.timeColumn()) && found.size() > most) {
        header = line;
        most = found.size();
      }
    }
    return header;
  }

  /** The fields of one line; none if it is no whole record. */
  static List<String> cells(String line, TableForm form) {
    try (CsvReader<CsvRecord> reader =
        CsvReader.builder().fieldSeparator(form.separator()).ofCsvRecord(line)) {
      return reader.stream()
          .limit(1)
          .flatMap(record -> record.getFields().stream())
          .map(cell -> form.encoding().repaired(cell).strip())
          .toList();
    } catch (CsvParseException | IOException noRecord) {
      return List.of();
    }
  }

  private static List<String> first(Path file, int most, Optional<TextEncoding> encoding)
      throws TableException {
    try (TableBytes bytes = TableBytes.open(file);
        Reader text = bytes.text(encoding.orElse(told(bytes)))) {
      List<String> lines = new ArrayList<>();
      StringBuilder line = new StringBuilder();
      int letters = 0;
      int before = 0;
      int letter = text.read();
      for (; letter >= 0 && lines.size() < most && letters < MOST_LETTERS; letter = text.read()) {
        boolean isEnd = letter == '\r' || (letter == '\n' && before != '\r');
        if (isEnd || line.length() >= LONGEST) {
          lines.add(line.toString());
          line.setLength(0);
        } else if (letter != '\n') {
          line.append((char) letter);
        }
        before = letter;
        letters++;
      }
      if (lines.size() < most && letter < 0) {
        lines.add(line.toString());
      }
      return lines;
    } catch (IOException e) {
      throw FileFault.unreadable(file, FileFault.whileReading(e));
    }
  }

  private static TextEncoding told(TableBytes bytes) throws IOException {
    return bytes.isWide() ? TextEncoding.UTF_16 : TextEncoding.UTF_8;
  }
}
