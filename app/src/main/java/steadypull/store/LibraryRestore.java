package steadypull.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.JdbiException;
import steadypull.store.LibraryException.Reason;

/**
 * Puts a backup in the place of a library, which is set aside and never deleted. The backup is
 * verified to its last sample before anything is moved. One thread.
 */
public final class LibraryRestore {
  private static final String WAY_OUT =
      ", or copy it into an empty folder as library.sqlite and let steadypull --library FOLDER"
          + " check bring what can be read into a new library";

  private final Path backup;
  private final Path folder;

  private LibraryRestore(Path backup, Path folder) {
    this.backup = backup;
    this.folder = folder;
  }

  /**
   * What was restored. Immutable.
   *
   * @param trips how many trips the library has now
   * @param taken when the backup was made; empty for a library that was copied by other means
   * @param setAside where the library is now that was there before; empty: there was none
   */
  public record Restored(int trips, Optional<Instant> taken, Optional<Path> setAside) {}

  /**
   * Restores a backup.
   *
   * @param backup left as it is
   * @param folder of the library
   * @param now dates the name under which the present library is set aside
   * @throws LibraryException if the file is not a whole library of this version or an older one, or
   *     if somebody has the present library open; then nothing has changed
   */
  public static Restored restore(Path backup, Path folder, Instant now) throws LibraryException {
    LibraryRestore restore = new LibraryRestore(backup, folder);
    Path file = LibraryFile.in(folder);
    restore.requireFile(file);
    Path incoming = folder.resolve(".restoring-" + UUID.randomUUID() + ".sqlite");
    try {
      LibraryFile.createFolder(folder);
      restore.copyTo(incoming);
      Verified verified = restore.verify(incoming);
      return new Restored(verified.trips, verified.taken, replace(file, incoming, now));
    } catch (IOException e) {
      throw LibraryFault.of("restore " + backup, file, e);
    } finally {
      restore.clearUp(incoming);
    }
  }

  /** Returns where the library is now that was there before. */
  private static Optional<Path> replace(Path file, Path incoming, Instant now)
      throws LibraryException, IOException {
    SetAside present = new SetAside(file, now);
    Optional<Path> place = present.moveAway();
    try {
      BackupFile.moveIntoPlace(incoming, file);
      return place;
    } catch (IOException e) {
      if (place.isPresent()) {
        present.moveBack(place.get());
      }
      throw e;
    }
  }

  private record Verified(int trips, Optional<Instant> taken) {}

  private void requireFile(Path file) throws LibraryException {
    if (!Files.isRegularFile(backup)) {
      throw refusal(
          Reason.NOT_A_LIBRARY, Files.exists(backup) ? "a folder" : "no file of that name");
    }
    if (backup.toAbsolutePath().normalize().equals(file.toAbsolutePath().normalize())) {
      throw refusal(Reason.ALREADY_THERE, "the present library itself");
    }
  }

  private void copyTo(Path incoming) throws IOException {
    LibraryFile.createOwnerOnly(incoming);
    Files.copy(backup, incoming, StandardCopyOption.REPLACE_EXISTING);
    LibraryFile.keepToOwner(incoming);
    // A library that was copied by other means may have its last seconds in its log.
    Path log = LibraryFile.logOf(backup);
    if (Files.exists(log)) {
      Files.copy(log, LibraryFile.logOf(incoming));
    }
  }

  private Verified verify(Path incoming) throws LibraryException {
    try (Handle handle = BackupFile.open(incoming)) {
      if (!Schema.isLibrary(handle)) {
        throw refusal(Reason.NOT_A_LIBRARY, "a file of another kind");
      }
      Schema.bringUpToDate(handle, backup);
      Optional<Instant> taken = BackupFile.taken(handle);
      handle.createUpdate(Sql.of("dropBackup")).execute();
      List<String> findings = LibraryCheck.findings(handle);
      if (!findings.isEmpty()) {
        throw refusal(Reason.DAMAGED, "a damaged one (" + findings.getFirst() + ")");
      }
      handle.execute(Sql.of("sqlite.leaveLog"));
      return new Verified(new TripReader(handle).ids().size(), taken);
    } catch (JdbiException e) {
      LibraryException fault = LibraryFault.of("restore " + backup, backup, e);
      throw switch (fault.reason()) {
        case DAMAGED -> refusal(Reason.DAMAGED, "a damaged one");
        case NOT_A_LIBRARY -> refusal(Reason.NOT_A_LIBRARY, "a file of another kind");
        default -> fault;
      };
    }
  }

  private LibraryException refusal(Reason reason, String found) {
    return new LibraryException(
        reason,
        "Could not restore %s into the library %s: expected a whole backup of a trip library, found %s. Nothing was changed; name another backup%s."
            .formatted(backup, folder, found, reason == Reason.DAMAGED ? WAY_OUT : ""));
  }

  private void clearUp(Path incoming) {
    try {
      Files.deleteIfExists(incoming);
      Files.deleteIfExists(LibraryFile.logOf(incoming));
      Files.deleteIfExists(incoming.resolveSibling(incoming.getFileName() + "-shm"));
      Files.deleteIfExists(incoming.resolveSibling(incoming.getFileName() + "-journal"));
    } catch (IOException e) {
      // Its name says what it is; nobody takes it for the library.
      return;
    }
  }
}
