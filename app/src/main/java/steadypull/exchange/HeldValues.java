package steadypull.exchange;

import java.util.List;

/**
 * Tells fresh values of held columns from repeated ones, row by row. A change is fresh in any case;
 * without one a value is fresh when its turn has come. If a column that keeps to rows changes out
 * of turn, a row was lost or doubled, and the turn of all that are polled with it shifts by as many
 * rows. One thread.
 */
final class HeldValues {
  private static final class Column {
    final Freshness freshness;
    boolean hasValue;
    double value;

    /** A row of its turn, if it keeps to rows; else the row from which it is fresh again. */
    long turn;

    Column(Freshness freshness) {
      this.freshness = freshness;
      this.turn = freshness.phase().orElse(0);
    }

    int period() {
      return freshness.period().orElse(1);
    }

    boolean isTurn(long row) {
      if (freshness.period().isEmpty()) {
        return !hasValue;
      }
      return freshness.isLocked() ? Math.floorMod(row - turn, period()) == 0 : row >= turn;
    }

    /** Rows from its turn to this row, the shorter way: negative if the row is early. */
    long late(long row) {
      long late = Math.floorMod(row - turn, period());
      return late > period() / 2 ? late - period() : late;
    }
  }

  private final List<Column> columns;

  HeldValues(List<Freshness> freshness) {
    this.columns = freshness.stream().map(Column::new).toList();
  }

  /** Whether the value of a column, numbered as the held columns are, is fresh in a row. */
  boolean isFresh(int number, long row, double value) {
    Column column = columns.get(number);
    boolean isChange = column.hasValue && value != column.value;
    boolean isFresh = isChange || column.isTurn(row);
    if (isChange && column.freshness.isLocked()) {
      shiftTurns(column.freshness, column.late(row));
    }
    if (isFresh && !column.freshness.isLocked()) {
      column.turn = row + column.period();
    }
    column.hasValue = true;
    column.value = value;
    return isFresh;
  }

  private void shiftTurns(Freshness changed, long rows) {
    for (Column column : columns) {
      if (column.freshness.sharesTurn(changed)) {
        column.turn += rows;
      }
    }
  }
}
