package steadypull.store;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.JdbiException;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteDataSource;
import steadypull.store.LibraryException.Reason;

/**
 * The file of a backup: a library closed as one single file, with a table that says when it was
 * made. Written beside its place and moved there when it is complete. One thread.
 */
final class BackupFile {
  private final Path target;

  BackupFile(Path target) {
    this.target = target;
  }

  /**
   * Copies a library as it is at this moment. Reading for as long as that takes keeps nobody from
   * writing; a copy in steps would begin anew whenever somebody writes. The copy is read to its
   * last sample before it takes the place of an earlier one.
   *
   * @param library reads
   * @throws LibraryException with {@link Reason#DAMAGED} if the copy could not be restored; an
   *     earlier backup stays
   */
  Backup write(Handle library, Instant taken) throws LibraryException {
    Path part =
        target
            .toAbsolutePath()
            .resolveSibling("." + target.getFileName() + "." + UUID.randomUUID() + ".part");
    try {
      LibraryFile.createOwnerOnly(part);
      library.execute(Sql.of("sqlite.vacuumInto"), part.toString());
      Backup backup = mark(part, taken);
      moveIntoPlace(part, target);
      return backup;
    } catch (JdbiException e) {
      LibraryException fault = LibraryFault.of("write a backup to " + target, target, e);
      throw fault.reason() == Reason.DAMAGED ? damaged() : fault;
    } catch (IOException e) {
      throw LibraryFault.of("write a backup to " + target, target, e);
    } finally {
      deleteUnfinished(part);
    }
  }

  private Backup mark(Path part, Instant taken) throws LibraryException, IOException {
    try (Handle handle = open(part)) {
      if (!LibraryCheck.findings(handle).isEmpty()) {
        throw damaged();
      }
      handle.createScript(Sql.of("sqlite.createBackup")).execute();
      handle
          .createUpdate(Sql.of("insertBackup"))
          .bind("takenEpochMillis", taken.toEpochMilli())
          .execute();
      List<Long> counts =
          handle
              .createQuery(Sql.of("countTrips"))
              .map((row, context) -> List.of(row.getLong(1), row.getLong(2)))
              .one();
      return new Backup(
          target, Files.size(part), Math.toIntExact(counts.getFirst()), counts.getLast());
    }
  }

  /** When a backup was made, or empty for a file that is none. */
  static Optional<Instant> taken(Path file) {
    SQLiteConfig config = new SQLiteConfig();
    config.setReadOnly(true);
    try (Handle handle = open(config, file)) {
      return Schema.isLibrary(handle) ? taken(handle) : Optional.empty();
    } catch (JdbiException e) {
      // No database, or none that can be read: no backup of ours either.
      return Optional.empty();
    }
  }

  static Optional<Instant> taken(Handle handle) {
    boolean isBackup =
        handle.createQuery(Sql.of("sqlite.countBackupTables")).mapTo(Integer.class).one() > 0;
    return isBackup
        ? handle
            .createQuery(Sql.of("selectBackup"))
            .mapTo(Long.class)
            .findFirst()
            .map(Instant::ofEpochMilli)
        : Optional.empty();
  }

  /** Opens a database that stays one single file. */
  static Handle open(Path file) {
    return open(new SQLiteConfig(), file);
  }

  private static Handle open(SQLiteConfig config, Path file) {
    SQLiteDataSource source = new SQLiteDataSource(config);
    source.setUrl("jdbc:sqlite:" + file);
    return Jdbi.create(source).open();
  }

  /** Moves a file that is complete; it is on the disk before its name is. */
  static void moveIntoPlace(Path part, Path target) throws IOException {
    try (FileChannel channel = FileChannel.open(part, StandardOpenOption.WRITE)) {
      channel.force(true);
    }
    try {
      Files.move(part, target, StandardCopyOption.ATOMIC_MOVE);
    } catch (AtomicMoveNotSupportedException e) {
      Files.move(part, target, StandardCopyOption.REPLACE_EXISTING);
    }
  }

  /** Refuses to write over what is no backup, unless told to, and over a library in any case. */
  void requirePlace(Path library, boolean mayReplaceAnything) throws LibraryException {
    if (Files.isDirectory(target)) {
      throw refusal("the name of a file", "a folder", "Name a file in it");
    }
    if (isSame(library)) {
      throw refusal("a place beside the library", "the library itself", "Name another file");
    }
    if (Files.exists(target) && !mayReplaceAnything && taken(target).isEmpty()) {
      throw refusal(
          "a new name or an earlier backup",
          "another file",
          "Name another file, or say that it may be overwritten");
    }
  }

  private boolean isSame(Path library) {
    try {
      return Files.exists(target) && Files.isSameFile(target, library);
    } catch (IOException e) {
      // What cannot be looked at cannot be written either, and says so then.
      return false;
    }
  }

  private LibraryException damaged() {
    return new LibraryException(
        Reason.DAMAGED,
        "Could not write a backup to %s: expected a library that is whole, found damage in it. %s Look at it with steadypull check, which brings what can be read into a new library."
            .formatted(
                target,
                Files.exists(target)
                    ? "What was there before is still there."
                    : "Nothing was written."));
  }

  private LibraryException refusal(String expected, String found, String advice) {
    return new LibraryException(
        Reason.ALREADY_THERE,
        "Could not write a backup to %s: expected %s, found %s. %s; nothing was changed."
            .formatted(target, expected, found, advice));
  }

  private static void deleteUnfinished(Path part) {
    try {
      Files.deleteIfExists(part);
    } catch (IOException e) {
      // Its name says that it is not finished; nobody takes it for a backup.
      return;
    }
  }
}
