package steadypull.store;

import java.nio.file.Path;
import java.util.List;
import java.util.function.Consumer;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.JdbiException;
import steadypull.store.LibraryException.Reason;

/** Brings a library file to the present form, one numbered migration file after the other. */
final class Schema {
  static final int NEWEST = 6;

  /** What each version does to the one before, the first to an empty file. */
  private static final List<Consumer<Handle>> STEPS =
      List.of(
          handle -> run(handle, "V1"),
          handle -> run(handle, "V2"),
          handle -> {
            run(handle, "V3");
            OldTrips.moveIntoSegments(handle);
            run(handle, "V3end");
          },
          handle -> run(handle, "V4"),
          handle -> run(handle, "V5"),
          handle -> run(handle, "V6"));

  private static final int NEW_FILE = 0;

  /** The letters STPL; set by the first migration. */
  private static final int APPLICATION_ID = 0x5354504C;

  private Schema() {}

  static void bringUpToDate(Handle handle, Path file) throws LibraryException {
    if (versionOf(handle, file) == NEWEST) {
      return;
    }
    Transaction.write(
        handle,
        transaction -> {
          // Asked again: another program may have been quicker before we held the file.
          int found = versionOf(transaction, file);
          for (int version = found + 1; version <= NEWEST; version++) {
            STEPS.get(version - 1).accept(transaction);
            setVersion(transaction, version);
          }
          return NEWEST - found;
        });
    giveBackRoom(handle);
  }

  /** What the older form took lies empty in the file now. */
  private static void giveBackRoom(Handle handle) {
    try {
      handle.execute(Sql.of("sqlite.vacuum"));
    } catch (JdbiException e) {
      // Somebody else reads, or the disk has no room for a second copy: later trips take the room.
      return;
    }
  }

  private static void run(Handle handle, String script) {
    handle.createScript(Sql.of("sqlite.migration." + script)).executeAsSeparateStatements();
  }

  /** Whether it is the database of a trip library, of whatever version. */
  static boolean isLibrary(Handle handle) {
    return number(handle, "selectApplicationId") == APPLICATION_ID;
  }

  /** What a database of that version holds besides data. */
  static List<SchemaObject> objectsOf(int version) {
    try (Handle handle = Jdbi.create("jdbc:sqlite::memory:").open()) {
      STEPS.subList(0, version).forEach(step -> step.accept(handle));
      return SchemaObject.allOf(handle);
    }
  }

  static int versionOf(Handle handle, Path file) throws LibraryException {
    int version = number(handle, "selectVersion");
    boolean isOurs = isLibrary(handle);
    boolean isEmpty = number(handle, "countSchema") == 0;
    if (!isOurs && !isEmpty) {
      throw new LibraryException(
          Reason.NOT_A_LIBRARY,
          "Could not open %s: expected a trip library, found the database of another program. Nothing was changed; name another folder."
              .formatted(file));
    }
    if (version > NEWEST) {
      throw new LibraryException(
          Reason.NEWER_SCHEMA,
          "Could not open %s: expected a library of version %d or older, found version %d. Update the program; nothing was changed."
              .formatted(file, NEWEST, version));
    }
    return isEmpty ? NEW_FILE : version;
  }

  private static void setVersion(Handle handle, int version) {
    handle.createUpdate(Sql.of("sqlite.setVersion")).define("version", version).execute();
  }

  private static int number(Handle handle, String query) {
    return handle.createQuery(Sql.of("sqlite." + query)).mapTo(Integer.class).one();
  }
}
