package steadypull.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.JdbiException;
import org.jdbi.v3.core.result.ResultIterator;

/** The rows of a trip that a damaged library still gives. Inside somebody else's transaction. */
final class ReadableRows {
  private final Handle handle;
  private final long tripKey;
  private boolean isCutOff;

  ReadableRows(Handle handle, long tripKey) {
    this.handle = handle;
    this.tripKey = tripKey;
  }

  /** What a row says. */
  @FunctionalInterface
  interface Row<T> {
    T read(ResultSet row) throws SQLException;
  }

  /** Whether the last statement came upon damage before its end. */
  boolean isCutOff() {
    return isCutOff;
  }

  /** The rows of a statement up to where the library is damaged. */
  <T> List<T> upToDamage(String statement, Row<T> row) {
    List<T> found = new ArrayList<>();
    isCutOff = false;
    try (ResultIterator<T> rows =
        handle
            .createQuery(Sql.of(statement))
            .bind("tripKey", tripKey)
            .map((each, context) -> row.read(each))
            .iterator()) {
      while (rows.hasNext()) {
        found.add(rows.next());
      }
    } catch (JdbiException e) {
      if (!LibraryFault.isDamage(e)) {
        throw e;
      }
      // Whoever asked asks from the other end too.
      isCutOff = true;
    }
    return found;
  }
}
