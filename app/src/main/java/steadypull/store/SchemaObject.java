package steadypull.store;

import java.util.List;
import org.jdbi.v3.core.Handle;

/**
 * A table, index, view or trigger as a database describes it. Immutable.
 *
 * @param type the database's word for it, such as {@code table}
 * @param table the table that it belongs to
 * @param text its definition without comments and superfluous blanks
 */
record SchemaObject(String type, String name, String table, String text) {
  /** All, in a fixed order, but for those that the database makes by itself. */
  static List<SchemaObject> allOf(Handle handle) {
    return handle
        .createQuery(Sql.of("sqlite.selectSchema"))
        .map(
            (row, context) ->
                new SchemaObject(
                    row.getString("type"),
                    row.getString("name"),
                    row.getString("tbl_name"),
                    bare(row.getString("text"))))
        .list();
  }

  private static String bare(String definition) {
    return definition.replaceAll("--[^\n]*", " ").replaceAll("\\s+", " ").strip();
  }
}
