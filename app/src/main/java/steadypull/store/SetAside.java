package steadypull.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.JdbiException;
import steadypull.store.LibraryException.Reason;

/** Moves a library away under a dated name, if nobody has it open. One thread. */
final class SetAside {
  private static final DateTimeFormatter DATE =
      DateTimeFormatter.ofPattern("uuuuMMdd'T'HHmmss'Z'", Locale.ROOT).withZone(ZoneOffset.UTC);

  private final Path file;
  private final Instant now;

  SetAside(Path file, Instant now) {
    this.file = file;
    this.now = now;
  }

  /** Returns where it is now; empty if there was none. */
  Optional<Path> moveAway() throws LibraryException, IOException {
    if (!Files.exists(file)) {
      return Optional.empty();
    }
    closeAsOneFile();
    Path place = freePlace();
    move(file, place);
    Files.deleteIfExists(file.resolveSibling(file.getFileName() + "-shm"));
    return Optional.of(place);
  }

  /** Brings back what was moved away. */
  void moveBack(Path place) throws IOException {
    move(place, file);
  }

  /** The log first, so that the file is never without it where somebody might open it. */
  private static void move(Path from, Path to) throws IOException {
    Path log = LibraryFile.logOf(from);
    if (!Files.exists(log)) {
      Files.move(from, to);
      return;
    }
    Files.move(log, LibraryFile.logOf(to));
    try {
      Files.move(from, to);
    } catch (IOException e) {
      Files.move(LibraryFile.logOf(to), log);
      throw e;
    }
  }

  /**
   * Only who has a database to himself can take its log away (SQLite, "Write-Ahead Logging",
   * section 2.2), so whoever else has it open shows by that. A damaged one is moved together with
   * its log.
   */
  private void closeAsOneFile() throws LibraryException {
    try (Handle handle = BackupFile.open(file)) {
      handle.execute(Sql.of("sqlite.waitForNobody"));
      String mode = handle.createQuery(Sql.of("sqlite.leaveLog")).mapTo(String.class).one();
      if (!mode.equals("delete")) {
        throw held();
      }
    } catch (JdbiException e) {
      LibraryException fault = LibraryFault.of("set the present library aside", file, e);
      if (fault.reason() == Reason.BUSY) {
        throw held();
      }
      if (fault.reason() != Reason.DAMAGED && fault.reason() != Reason.NOT_A_LIBRARY) {
        throw fault;
      }
    }
  }

  private LibraryException held() {
    return new LibraryException(
        Reason.BUSY,
        "Could not restore into the library %s: expected nobody to have it open, found another program holding it. End the recording and close the program; nothing was changed."
            .formatted(file));
  }

  private Path freePlace() {
    String name = "library-replaced-" + DATE.format(now);
    Path place = file.resolveSibling(name + ".sqlite");
    for (int number = 2; Files.exists(place); number++) {
      place = file.resolveSibling(name + "-" + number + ".sqlite");
    }
    return place;
  }
}
