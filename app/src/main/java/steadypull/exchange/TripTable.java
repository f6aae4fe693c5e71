package steadypull.exchange;

import java.io.IOException;
import java.io.InterruptedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import steadypull.channel.Channel;

/**
 * Trip tables: CSV after RFC 4180 in UTF-8, first column {@code time[s]}, then one column for each
 * channel, headed {@code id[unit]}; an empty cell means "no sample then". A table may be packed
 * (gzip): when read, its first bytes tell; when written, the ending {@code .gz}. Stateless.
 *
 * <p>What is written comes back the same: times to one microsecond, values bit for bit. Time
 * increases from row to row, and a row holds one value of a channel; if a channel has two samples
 * in one microsecond, the second is written one microsecond later.
 */
public final class TripTable {
  private TripTable() {}

  /** Understands a table of our own form up to its first row. */
  public static IncomingTable open(Path file) throws TableException {
    refuseOtherKinds(file);
    return IncomingTable.open(file, Optional.empty(), TableZone.here(ZoneOffset.UTC));
  }

  /**
   * Understands a table of another program, with the help of a mapping, up to its first row.
   *
   * @param zone where its clock was, unless the table tells
   */
  public static IncomingTable open(Path file, MappingText mapping, TableZone zone)
      throws TableException {
    refuseOtherKinds(file);
    return IncomingTable.open(file, Optional.of(mapping.mapping()), zone);
  }

  /**
   * The first line of a table as it stands in the file: what tables of one kind have in common. At
   * most 100 000 characters.
   */
  public static String headerLine(Path file) throws TableException {
    return HeaderLine.of(file);
  }

  /**
   * The first lines of a table, one of which may be its header line; at most a hundred. The others
   * say something of the table.
   */
  public static List<String> firstLines(Path file) throws TableException {
    return HeaderLine.first(file);
  }

  /** Whether a header line is that of our own form. */
  public static boolean isOwnForm(String headerLine) {
    return headerLine.strip().startsWith(OwnHeader.TIME)
        || headerLine.strip().startsWith("\"" + OwnHeader.TIME);
  }

  /**
   * What tells the content of a table from any other: the first half of SHA-256 over its bytes,
   * unpacked, in hexadecimal digits.
   *
   * @param watch hears of the bytes of the file
   */
  public static String digest(Path file, TransferWatch watch) throws TableException {
    try (TableBytes bytes = TableBytes.open(file)) {
      return bytes.digest(watch);
    } catch (InterruptedIOException stopped) {
      throw new TableException(
          "Stopped looking through %s, as asked. Nothing was taken."
              .formatted(CellPlace.shown(file)),
          stopped);
    } catch (IOException e) {
      throw FileFault.unreadable(file, FileFault.whileReading(e));
    }
  }

  /**
   * Writes a table in place of whatever was there; a fault leaves the old file as it was.
   *
   * @param channels every channel that the source may have; those without samples get a column too
   * @param samples about in time order; poured out a second time if they are far from it
   * @return how many samples were written
   * @throws TableException if the file cannot be written or the watch has ended it
   */
  public static <X extends Exception> long write(
      Path file,
      List<Channel> channels,
      SampleSource<X> samples,
      ExportChoice choice,
      TransferWatch watch)
      throws TableException, X {
    if (Files.isDirectory(file.toAbsolutePath())) {
      throw new TableException(
          "Could not write %s: expected the name of a file, found a folder. Add a file name."
              .formatted(CellPlace.shown(file)));
    }
    try {
      return new TableFile(file).write(channels, samples, choice, watch);
    } catch (IOException e) {
      throw new TableException(
          "Could not write %s: expected a folder that takes a file, found %s. Choose another place or make room."
              .formatted(CellPlace.shown(file), FileFault.whileWriting(e, file)),
          e);
    }
  }

  private static void refuseOtherKinds(Path file) throws TableException {
    switch (IncomingFile.of(file)) {
      case IncomingFile.Table _ -> {}
      case IncomingFile.Trip _ -> throw FileFault.unreadable(file, "a trip file");
      case IncomingFile.Route _ -> throw FileFault.unreadable(file, "a route or track (XML)");
    }
  }
}
