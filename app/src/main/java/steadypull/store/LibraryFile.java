package steadypull.store;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.JdbiException;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteDataSource;

/**
 * The file behind a library: made so that only its owner can read it where the file system knows
 * owners, and opened so that what was committed survives a pulled plug.
 */
final class LibraryFile {
  private static final String NAME = "library.sqlite";
  private static final String LOG_ENDING = "-wal";

  /** The files that SQLite may make for a library, the library's own first. */
  static final List<String> NAMES = List.of(NAME, NAME + LOG_ENDING, NAME + "-shm");

  private static final String BACKUPS = "backups";
  private static final DateTimeFormatter MOMENT =
      DateTimeFormatter.ofPattern("uuuuMMdd'T'HHmmss'Z'", Locale.ROOT).withZone(ZoneOffset.UTC);
  private static final String OWNER_ONLY_FOLDER = "rwx------";
  private static final String OWNER_ONLY_FILE = "rw-------";

  private LibraryFile() {}

  /** Makes folder and file if they are not there; a folder that is there keeps its rights. */
  static Path create(Path folder) throws LibraryException {
    Path file = in(folder);
    try {
      createFolder(folder);
      if (!Files.exists(file)) {
        createFile(file);
      }
      return file;
    } catch (IOException e) {
      throw LibraryFault.of("make the library", file, e);
    }
  }

  static void createFolder(Path folder) throws IOException {
    Files.createDirectories(folder, ownerOnly(folder, OWNER_ONLY_FOLDER));
  }

  /** Makes an empty file that is not there yet. */
  static void createOwnerOnly(Path file) throws IOException {
    Files.createFile(file, ownerOnly(file, OWNER_ONLY_FILE));
  }

  /** Takes from others what rights they have. */
  static void keepToOwner(Path file) throws IOException {
    if (file.getFileSystem().supportedFileAttributeViews().contains("posix")) {
      Files.setPosixFilePermissions(file, PosixFilePermissions.fromString(OWNER_ONLY_FILE));
    }
  }

  /** Where the library of a folder lies. */
  static Path in(Path folder) {
    return folder.resolve(NAME);
  }

  /** Where the write-ahead log of a database lies. */
  static Path logOf(Path file) {
    return file.resolveSibling(file.getFileName() + LOG_ENDING);
  }

  /** A place for a backup of that moment; its folder is made if it is not there. */
  static Path backupBeside(Path file, Instant taken) throws LibraryException {
    Path folder = file.resolveSibling(BACKUPS);
    try {
      createFolder(folder);
      return folder.resolve("steadypull-" + MOMENT.format(taken) + ".backup");
    } catch (IOException e) {
      throw LibraryFault.of("make a folder for backups", folder, e);
    }
  }

  /** Brings a library that nobody has open into one file without anything beside it. */
  static Path closeAsOneFile(Path folder) throws LibraryException {
    Path file = in(folder);
    try (Handle handle = Jdbi.create("jdbc:sqlite:" + file).open()) {
      handle.execute(Sql.of("sqlite.leaveLog"));
      handle.execute(Sql.of("sqlite.vacuum"));
      return file;
    } catch (JdbiException e) {
      throw LibraryFault.of("close the library as one file", file, e);
    }
  }

  static Jdbi connect(Path file, Duration busyTimeout) {
    SQLiteConfig config = new SQLiteConfig();
    config.setJournalMode(SQLiteConfig.JournalMode.WAL);
    config.setSynchronous(SQLiteConfig.SynchronousMode.FULL);
    config.setBusyTimeout((int) busyTimeout.toMillis());
    config.enforceForeignKeys(true);
    // What was deleted is overwritten, so that no salvage takes it for something that is there.
    config.setPragma(SQLiteConfig.Pragma.SECURE_DELETE, "true");
    SQLiteDataSource source = new SQLiteDataSource(config);
    source.setUrl("jdbc:sqlite:" + file);
    return Jdbi.create(source);
  }

  private static void createFile(Path file) throws IOException {
    try {
      createOwnerOnly(file);
    } catch (FileAlreadyExistsException e) {
      // Another program was quicker: the file is there, which is all that was wanted.
      return;
    }
  }

  private static FileAttribute<?>[] ownerOnly(Path place, String permissions) {
    if (!place.getFileSystem().supportedFileAttributeViews().contains("posix")) {
      return new FileAttribute<?>[0];
    }
    return new FileAttribute<?>[] {
      PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString(permissions))
    };
  }
}
