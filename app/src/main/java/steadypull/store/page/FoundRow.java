package steadypull.store.page;

import java.util.List;
import java.util.Objects;

/**
 * A row as it lay in the file. Immutable.
 *
 * @param place where, to read it again
 * @param key the row's number for a row of a table, 0 for a row of an index
 * @param values in the order of the columns; those of an index end with the row's number
 */
public record FoundRow(Place place, long key, List<Value> values) {
  public FoundRow {
    Objects.requireNonNull(place);
    values = List.copyOf(values);
  }

  /** Whether it is a row of a table, and not of an index. */
  public boolean isOfTable() {
    return place.kind == PageKind.TABLE_LEAF;
  }

  /**
   * Where a row lies.
   *
   * @param page number of the page, from 1
   * @param kind what the page was taken for
   * @param cell number of the cell, from 0
   */
  public record Place(int page, PageKind kind, int cell) {
    public Place {
      Objects.requireNonNull(kind);
    }
  }
}
