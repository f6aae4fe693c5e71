package steadypull.cli;

import java.nio.file.Path;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import steadypull.exchange.IncomingTable;
import steadypull.exchange.MappingText;
import steadypull.exchange.TableException;
import steadypull.exchange.TableZone;
import steadypull.exchange.TripTable;
import steadypull.store.LibraryException;
import steadypull.store.TripLibrary;

/**
 * Finds out how a table is to be read: somebody's mapping first, then our own form, then the
 * mapping that was kept for its kind. One thread.
 */
final class TableOpening {
  /** The mappings that a library keeps. */
  @FunctionalInterface
  interface KeptMappings {
    /** The mapping for tables with that header line, or empty if none is kept. */
    Optional<String> of(String headerLine) throws LibraryException;
  }

  /**
   * A table that is open.
   *
   * @param words what is worth knowing of how it is read
   */
  record Opened(Path file, String headerLine, IncomingTable table, Optional<String> words) {
    String name() {
      return String.valueOf(file.getFileName()).replaceAll("\\p{Cntrl}", "?");
    }
  }

  private final Optional<MappingText> mapping;
  private final Optional<ZoneId> zone;
  private final KeptMappings kept;

  /**
   * An opening for the tables of one command.
   *
   * @param mapping somebody's, if there is one
   * @param zone where the clock of the tables was, if somebody said
   * @param kept asked only where nothing else tells
   */
  TableOpening(Optional<MappingText> mapping, Optional<ZoneId> zone, KeptMappings kept) {
    this.mapping = mapping;
    this.zone = zone;
    this.kept = kept;
  }

  /** The mapping in a file, or none if no file was named. */
  static Optional<MappingText> mapping(@Nullable Path file) throws TableException {
    return file == null ? Optional.empty() : Optional.of(MappingText.read(file));
  }

  /** The mapping that the library keeps for tables with that header line. */
  static Optional<String> kept(SteadypullCommand main, String headerLine) throws LibraryException {
    try (TripLibrary library = main.openLibraryToRead()) {
      return library.mapping(headerLine);
    }
  }

  Opened open(Path file) throws TableException, LibraryException {
    if (mapping.isPresent()) {
      return mapped(file, mapping.get(), Optional.empty());
    }
    List<String> lines = TripTable.firstLines(file);
    Optional<MappingText> found =
        TripTable.isOwnForm(lines.getFirst()) ? Optional.empty() : keptFor(lines);
    return found.isEmpty()
        ? new Opened(file, lines.getFirst(), TripTable.open(file), Optional.empty())
        : mapped(
            file,
            found.get(),
            Optional.of(
                "Read by the mapping that was kept for tables of this kind; --map replaces it."));
  }

  /** Any of the first lines may be the header; blank ones are not. */
  private Optional<MappingText> keptFor(List<String> lines) throws LibraryException {
    for (String line : lines) {
      Optional<String> toml = line.isBlank() ? Optional.empty() : kept.of(line);
      if (toml.isPresent()) {
        return Optional.of(new MappingText("kept for this header", toml.get(), false));
      }
    }
    return Optional.empty();
  }

  private Opened mapped(Path file, MappingText mapping, Optional<String> words)
      throws TableException {
    IncomingTable table =
        TripTable.open(file, mapping, new TableZone(zone, ZoneId.systemDefault()));
    return new Opened(file, table.headerLine(), table, words);
  }
}
