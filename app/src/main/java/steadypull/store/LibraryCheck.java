package steadypull.store;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.JdbiException;
import steadypull.store.LibraryException.Reason;
import steadypull.store.page.DatabasePages;

/**
 * Verifies a library: the database's own form, every segment's check, and every trip against what
 * it says of itself. What is damaged is salvaged into a new library beside, as far as it can be
 * read; the damaged one is left as it is. One thread.
 *
 * <p>Not in a program that records: where a damaged file is read page by page, closing it lets go
 * of the locks that the whole program holds on it (SQLite, "How To Corrupt An SQLite Database
 * File", section 2.2).
 */
public final class LibraryCheck {
  private static final Duration BUSY_TIMEOUT = Duration.ofSeconds(5);
  private static final String BROKEN_OFF =
      "the database could not be read to its end, so its pages were read one by one";
  private static final int MOST_FINDINGS = 20;

  private final Path folder;
  private final boolean isToSalvage;

  private LibraryCheck(Path folder, boolean isToSalvage) {
    this.folder = folder;
    this.isToSalvage = isToSalvage;
  }

  /**
   * Checks the library of a folder; a folder without one holds no trips and is well.
   *
   * @throws LibraryException if the file is not a library, is of a newer version or cannot be read
   *     at all, or if what can be salvaged cannot be written
   */
  public static CheckReport check(Path folder) throws LibraryException {
    return new LibraryCheck(folder, true).check();
  }

  /**
   * Checks the library of a folder as {@link #check} does, and writes nothing; what is lost is told
   * as if it were salvaged.
   *
   * @throws LibraryException if the file is not a library, is of a newer version or cannot be read
   *     at all
   */
  public static CheckReport look(Path folder) throws LibraryException {
    return new LibraryCheck(folder, false).check();
  }

  /** The folders of earlier salvages of a library that are still there, oldest first. */
  public static List<Path> salvages(Path folder) {
    return Salvage.earlier(folder);
  }

  private CheckReport check() throws LibraryException {
    Map<KeptTable, Long> wholeTables = new EnumMap<>(KeptTable.class);
    try (LibraryConnection library = LibraryConnection.openToRead(folder, BUSY_TIMEOUT)) {
      // Inside one transaction: as long as it reads, nobody moves pages from the log into the file.
      return library.ask("check the library", handle -> check(handle, wholeTables));
    } catch (LibraryException e) {
      if (e.reason() != Reason.DAMAGED && e.reason() != Reason.NOT_A_LIBRARY) {
        throw e;
      }
      return salvageUnchecked(e, wholeTables);
    }
  }

  /** Fills in the tables that are whole, also where the database breaks its own check off. */
  private CheckReport check(Handle handle, Map<KeptTable, Long> wholeTables)
      throws LibraryException {
    List<String> findings;
    try {
      findings = findings(handle);
    } catch (JdbiException e) {
      wholeTables.putAll(KeptTable.wholeTables(handle));
      throw e;
    }
    if (findings.isEmpty()) {
      return CheckReport.ok(new TripReader(handle).ids().size());
    }
    wholeTables.putAll(KeptTable.wholeTables(handle));
    return salvage(findings, wholeTables);
  }

  /** What is not as it should be, in words; inside somebody else's transaction. */
  static List<String> findings(Handle handle) {
    List<String> findings =
        new ArrayList<>(
            handle
                .createQuery(Sql.of("sqlite.checkIntegrity"))
                .define("what", MOST_FINDINGS)
                .mapTo(String.class)
                .list());
    findings.remove("ok");
    if (findings.isEmpty()) {
      findings.addAll(TripCheck.findings(handle));
    }
    return findings;
  }

  /** A file of another program must not be taken for a damaged library. */
  private CheckReport salvageUnchecked(LibraryException fault, Map<KeptTable, Long> wholeTables)
      throws LibraryException {
    CheckReport report = salvage(List.of(BROKEN_OFF), wholeTables);
    if (fault.reason() == Reason.NOT_A_LIBRARY && !report.isReadable()) {
      throw fault;
    }
    return report;
  }

  private static boolean isLearnedKnown(Map<KeptTable, Long> wholeTables, LibraryFinds finds) {
    Long rows = wholeTables.get(KeptTable.ROAD_LEARNED);
    return rows != null && rows <= finds.roadLearned().size();
  }

  private CheckReport salvage(List<String> findings, Map<KeptTable, Long> wholeTables)
      throws LibraryException {
    Path file = LibraryFile.in(folder);
    try (DatabasePages pages = DatabasePages.open(file, LibraryFile.logOf(file))) {
      LibraryFinds finds = LibraryFinds.of(pages);
      if (!finds.isOfLibrary()) {
        return new CheckReport(
            true, false, 0, findings, List.of(), List.of(), Optional.empty(), Optional.empty());
      }
      Salvage salvage = new Salvage(finds, pages, isLearnedKnown(wholeTables, finds));
      Optional<Path> salvaged =
          isToSalvage ? Optional.of(salvage.writeBeside(folder)) : Optional.empty();
      if (!isToSalvage) {
        salvage.look();
      }
      return new CheckReport(
          true,
          true,
          finds.trips().size(),
          findings,
          salvage.lostParts(),
          salvage.losses(),
          KeptTable.mayBeMissing(wholeTables, finds),
          salvaged);
    } catch (IOException e) {
      throw LibraryFault.of("read the damaged library", file, e);
    } catch (UncheckedIOException e) {
      throw LibraryFault.of("read the damaged library", file, new IOException(e));
    }
  }
}
