package steadypull.exchange;

import java.util.List;
import java.util.OptionalInt;

/**
 * What the columns of one table are. Immutable.
 *
 * @param isMapped whether a mapping tells it
 * @param form how the text is laid out
 * @param time how time is told
 * @param timeIndex place of the time among the fields of a row, from 0
 * @param dateIndex place of the day, from 0; empty: it has no field of its own
 * @param mayRepeatTime whether rows may share a time
 * @param width fields of the header
 * @param columns the columns that are taken, in the order of the table
 * @param round rows of a round, if somebody said
 */
record TableLayout(
    boolean isMapped,
    TableForm form,
    TimeForm time,
    int timeIndex,
    String timeHeader,
    OptionalInt dateIndex,
    boolean mayRepeatTime,
    int width,
    List<TableColumn> columns,
    OptionalInt round) {
  TableLayout {
    columns = List.copyOf(columns);
  }

  /** The columns whose values are held. */
  List<TableColumn> heldColumns() {
    return columns.stream().filter(TableColumn::isHeld).toList();
  }
}
