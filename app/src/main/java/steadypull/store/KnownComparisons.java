package steadypull.store;

import java.util.List;

/** The comparisons of runs that a library keeps, by their names. Any thread. */
public final class KnownComparisons {
  private final LibraryConnection connection;

  KnownComparisons(LibraryConnection connection) {
    this.connection = connection;
  }

  /** All of them, last kept first. */
  public List<KeptComparison> all() throws LibraryException {
    return connection.ask("list the comparisons", ComparisonRows::all);
  }

  /** Keeps one in place of the one of the same name. */
  public void keep(KeptComparison comparison) throws LibraryException {
    connection.change(
        "keep the comparison " + comparison.name(),
        handle -> {
          ComparisonRows.save(handle, comparison);
          return comparison.name();
        });
  }

  /**
   * Forgets the one of that name; its trips stay.
   *
   * @return whether there was one
   */
  public boolean forget(String name) throws LibraryException {
    return connection.change(
        "forget the comparison " + name, handle -> ComparisonRows.delete(handle, name));
  }
}
