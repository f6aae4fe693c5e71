package steadypull.store;

import java.nio.file.Path;
import java.util.List;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.JdbiException;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteDataSource;
import steadypull.store.LibraryException.Reason;

/**
 * Judges a database file that comes from elsewhere before anything else touches it, after SQLite's
 * "Defense Against The Dark Arts" (https://www.sqlite.org/security.html, section 1.2, items 1 to
 * 5): a limit on lengths, no trust in functions that a schema names, cells checked for their size,
 * no mapped memory, and a check of the pages.
 *
 * <p>Beyond that, no definition but those of our own schema is let in, word for word: so there is
 * no trigger, view, index, generated column or check constraint that could run. The driver has no
 * way to switch on SQLite's "defensive" mode; it guards against hostile statements, and none are
 * taken from the file.
 */
final class ForeignFile {
  /** A segment takes some 2 bytes a sample, and a vehicle's file less than 1 MB. */
  private static final int MOST_OCTETS = 8 << 20;

  /** The file as the user named it, for messages. */
  private final Path named;

  private final Handle handle;

  private ForeignFile(Path named, Handle handle) {
    this.named = named;
    this.handle = handle;
  }

  /**
   * Passes, or refuses.
   *
   * @param copy private, so that nobody changes it between this check and its use
   * @param named the file as the user named it
   */
  static void requireLibrary(Path copy, Path named) throws LibraryException {
    try (Handle handle = connect(copy)) {
      handle.createScript(Sql.of("sqlite.beWary")).executeAsSeparateStatements();
      new ForeignFile(named, handle).requireLibrary();
    } catch (JdbiException e) {
      LibraryException fault = LibraryFault.of("read it", named, e);
      throw switch (fault.reason()) {
        case NOT_A_LIBRARY -> refusal(Reason.NOT_A_LIBRARY, named, "a file of another kind", e);
        default -> refusal(Reason.DAMAGED, named, "a damaged file (" + cause(e) + ")", e);
      };
    }
  }

  /** What a file cannot be taken for, with what to do. */
  static LibraryException refusal(Reason reason, Path named, String found, Exception cause) {
    return new LibraryException(reason, message(named, found), cause);
  }

  static LibraryException refusal(Reason reason, Path named, String found) {
    return new LibraryException(reason, message(named, found));
  }

  private static String message(Path named, String found) {
    return "Could not read %s: expected a trip file, found %s. Nothing was imported; have the trip exported once more."
        .formatted(named, found);
  }

  private static String cause(Throwable thrown) {
    Throwable last = thrown;
    for (Throwable next = thrown; next != null; next = next.getCause()) {
      last = next;
    }
    return String.valueOf(last.getMessage()).lines().findFirst().orElse("");
  }

  private static Handle connect(Path copy) {
    SQLiteConfig config = new SQLiteConfig();
    config.setPragma(SQLiteConfig.Pragma.LIMIT_LENGTH, Integer.toString(MOST_OCTETS));
    config.setPragma(SQLiteConfig.Pragma.LIMIT_ATTACHED, "0");
    SQLiteDataSource source = new SQLiteDataSource(config);
    source.setUrl("jdbc:sqlite:" + copy);
    return Jdbi.create(source).open();
  }

  private void requireLibrary() throws LibraryException {
    int version = requireVersion();
    if (!SchemaObject.allOf(handle).equals(Schema.objectsOf(version))) {
      throw refusal(
          Reason.NOT_A_LIBRARY,
          named,
          "definitions that the program did not write (a trigger, a view, other tables)");
    }
    String verdict = handle.createQuery(Sql.of("sqlite.checkQuickly")).mapTo(String.class).first();
    if (!verdict.equals("ok")) {
      throw refusal(Reason.DAMAGED, named, "a damaged file (" + verdict.strip() + ")");
    }
    requireModestValues();
  }

  private int requireVersion() throws LibraryException {
    int version;
    try {
      version = Schema.versionOf(handle, named);
    } catch (LibraryException e) {
      throw switch (e.reason()) {
        case NEWER_SCHEMA ->
            new LibraryException(
                Reason.NEWER_SCHEMA,
                "Could not read %s: expected a trip file of this version of the program or an older one, found one of a newer version. Update the program; nothing was imported."
                    .formatted(named),
                e);
        default -> refusal(Reason.NOT_A_LIBRARY, named, "the database of another program", e);
      };
    }
    if (version < 1) {
      throw refusal(Reason.NOT_A_LIBRARY, named, "an empty database");
    }
    return version;
  }

  /** Asked of the lengths alone, so that a huge value is not read. */
  private void requireModestValues() throws LibraryException {
    for (String[] column : columns()) {
      long longest =
          handle
              .createQuery(Sql.of("sqlite.selectLongestValue"))
              .define("table", quoted(column[0]))
              .define("column", quoted(column[1]))
              .mapTo(Long.class)
              .one();
      if (longest > MOST_OCTETS / 2) {
        throw refusal(
            Reason.DAMAGED,
            named,
            "a value of %d bytes in %s.%s".formatted(longest, column[0], column[1]));
      }
    }
  }

  private static String quoted(String name) {
    return '"' + name + '"';
  }

  private List<String[]> columns() {
    return handle
        .createQuery(Sql.of("sqlite.selectColumns"))
        .map((row, context) -> new String[] {row.getString(1), row.getString(2)})
        .list();
  }
}
