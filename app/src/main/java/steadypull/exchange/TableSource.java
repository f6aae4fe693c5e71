package steadypull.exchange;

import de.siegmar.fastcsv.reader.CsvRecord;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import steadypull.channel.Channel;

/**
 * A table that can be read from its first row as often as wanted. Immutable, as long as the file
 * is.
 *
 * @param fileTime when the file was last written
 * @param zone where its clock was
 */
record TableSource(Path file, TableLayout layout, Instant fileTime, TableZone zone) {
  /** Opens the table behind its header. */
  TableRows open() throws TableException {
    TableRows rows = TableRows.open(file, layout.form());
    rows.next();
    return rows;
  }

  /** A reader for one reading from the first row on. */
  RowReader reader() {
    return new RowReader(file, layout, fileTime, zone);
  }

  Channel channel(int column) {
    return layout.columns().get(column).channel();
  }

  /** The number among the held columns of each column; -1 for one that is not held. */
  int[] heldNumbers() {
    int[] numbers = new int[layout.columns().size()];
    int next = 0;
    for (int column = 0; column < numbers.length; column++) {
      numbers[column] = layout.columns().get(column).isHeld() ? next++ : -1;
    }
    return numbers;
  }

  /** When each of the held columns was polled: as somebody said, or as the first rows tell. */
  List<Freshness> freshness() throws TableException {
    List<TableColumn> held = layout.heldColumns();
    if (held.isEmpty() || layout.round().isPresent()) {
      return held.stream().map(each -> Freshness.every(layout.round().orElse(1))).toList();
    }
    RoundSurvey survey = new RoundSurvey(held.size());
    int[] numbers = heldNumbers();
    RowReader reader = reader();
    try (TableRows rows = open()) {
      for (Optional<CsvRecord> row = rows.next();
          row.isPresent() && !survey.isComplete();
          row = rows.next()) {
        reader.time(row.get());
        reader.cells(row.get(), (column, value) -> add(survey, numbers[column], value));
        survey.endRow();
      }
    }
    return survey.freshness();
  }

  private static void add(RoundSurvey survey, int number, double value) {
    if (number >= 0) {
      survey.value(number, value);
    }
  }
}
