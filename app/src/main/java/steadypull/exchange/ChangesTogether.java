package steadypull.exchange;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;

/** Counts in how many rows of a table columns change together. One thread. */
final class ChangesTogether {
  /** Fewer rows with a change tell nothing. Our choice. */
  private static final int LEAST_CHANGES = 20;

  /** One row in so many may show two changes: a row may have been lost. Our choice. */
  private static final int EXCEPTION = 20;

  private final double[] last;
  private final BitSet known = new BitSet();
  private final List<BitSet> changes = new ArrayList<>();
  private BitSet row = new BitSet();

  ChangesTogether(int columns) {
    this.last = new double[columns];
  }

  /** A number in the row under way. */
  void value(int column, double value) {
    if (known.get(column) && last[column] != value) {
      row.set(column);
    }
    known.set(column);
    last[column] = value;
  }

  /** The row is complete. */
  void endRow() {
    if (!row.isEmpty()) {
      changes.add(row);
      row = new BitSet();
    }
  }

  /** Whether in hardly any row more than one of those columns changes. */
  boolean areOneByOne(List<ColumnGlance> measured) {
    BitSet wanted = new BitSet();
    measured.forEach(column -> wanted.set(column.index()));
    long changed = changes.stream().filter(each -> together(each, wanted) > 0).count();
    long together = changes.stream().filter(each -> together(each, wanted) > 1).count();
    return changed >= LEAST_CHANGES && together * EXCEPTION < changed;
  }

  private static int together(BitSet changed, BitSet wanted) {
    BitSet both = (BitSet) changed.clone();
    both.and(wanted);
    return both.cardinality();
  }
}
