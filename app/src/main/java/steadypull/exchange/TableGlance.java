package steadypull.exchange;

import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;

/** Looks at the first rows of a foreign table to guess how it is laid out. One thread. */
final class TableGlance {
  private static final int ROWS = 20_000;

  /** Numbers, times of the clock and days, or nothing. */
  private static final Pattern NUMBERS = Pattern.compile("|[-+]?[0-9.,][-+0-9.,:/ TZeE]*");

  private final TableForm form;
  private final List<ColumnGlance> columns = new ArrayList<>();
  private final NumberCell numbers;
  private final ChangesTogether changes;
  private boolean isRagged;
  private int rows;

  private TableGlance(TableForm form, List<String> headers) {
    this.form = form;
    this.numbers = new NumberCell(form.decimal());
    for (String header : headers) {
      columns.add(new ColumnGlance(columns.size(), form.encoding().repaired(header).strip()));
    }
    this.changes = new ChangesTogether(columns.size());
  }

  static TableGlance at(Path file) throws TableException {
    TableForm point = form(file);
    TableGlance glance = look(file, point);
    if (point.separator() == ',') {
      return glance;
    }
    TableGlance comma = look(file, point.withDecimalComma());
    return comma.numericColumns() > glance.numericColumns() ? comma : glance;
  }

  private static TableGlance look(Path file, TableForm form) throws TableException {
    try (TableRows rows = TableRows.open(file, form)) {
      CsvRecord header =
          rows.next()
              .orElseThrow(
                  () -> CellPlace.ofLine(file, 1).refusal("a header line", "an empty file"));
      TableGlance glance = new TableGlance(form, header.getFields());
      for (Optional<CsvRecord> row = rows.next();
          row.isPresent() && glance.rows < ROWS;
          row = rows.next()) {
        glance.look(row.get());
      }
      return glance;
    }
  }

  private static TableForm form(Path file) throws TableException {
    List<String> lines = HeaderLine.first(file);
    HeaderGuess header = HeaderGuess.of(lines);
    return new TableForm(
        header.separator(),
        '.',
        encoding(file, lines.get(header.linesBefore())),
        true,
        Set.of(),
        header.linesBefore());
  }

  private static TextEncoding encoding(Path file, String line) throws TableException {
    try (TableBytes bytes = TableBytes.open(file)) {
      if (bytes.isWide()) {
        return TextEncoding.UTF_16;
      }
    } catch (IOException e) {
      throw FileFault.unreadable(file, FileFault.whileReading(e));
    }
    if (line.indexOf('\uFFFD') >= 0) {
      return TextEncoding.WINDOWS_1252;
    }
    return TextEncoding.looksTwice(line) ? TextEncoding.UTF_8_TWICE : TextEncoding.UTF_8;
  }

  private void look(CsvRecord row) {
    isRagged |= row.getFieldCount() < columns.size();
    for (int index = 0; index < Math.min(row.getFieldCount(), columns.size()); index++) {
      String cell = row.getField(index).strip();
      if (!cell.isEmpty()) {
        columns.get(index).text(cell);
        if (numbers.accepts(cell) && Double.isFinite(numbers.scan().value())) {
          columns.get(index).number(numbers.scan().value());
          changes.value(index, numbers.scan().value());
        } else {
          columns.get(index).word(cell);
        }
      }
    }
    changes.endRow();
    rows++;
  }

  private long numericColumns() {
    return columns.stream().filter(ColumnGlance::isNumeric).count();
  }

  /** How the text is laid out. */
  TableForm form() {
    return new TableForm(
        form.separator(), form.decimal(), form.encoding(), isRagged, missing(), form.linesBefore());
  }

  private Set<String> missing() {
    Set<String> words = new TreeSet<>();
    columns.stream().filter(ColumnGlance::isNumeric).forEach(each -> words.addAll(each.missing()));
    return words;
  }

  List<ColumnGlance> columns() {
    return List.copyOf(columns);
  }

  /** Whether the first line looks like a row of numbers and times. */
  boolean hasNumbersForHeaders() {
    return columns.stream().anyMatch(each -> !each.header().isEmpty())
        && columns.stream().allMatch(each -> NUMBERS.matcher(each.header()).matches());
  }

  /** Rows that were looked at. */
  int rows() {
    return rows;
  }

  /**
   * Whether those columns look polled in turn and repeated between: they are filled, and hardly
   * ever does more than one change in a row.
   */
  boolean isHeld(List<ColumnGlance> measured) {
    boolean isFilled = measured.stream().allMatch(each -> each.filled() > rows - rows / 10);
    return measured.size() > 2 && rows >= 100 && isFilled && changes.areOneByOne(measured);
  }
}
