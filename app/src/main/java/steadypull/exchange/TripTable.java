package steadypull.exchange;

import java.io.IOException;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import steadypull.channel.Sample;

/**
 * Trip tables: CSV after RFC 4180 in UTF-8, first column {@code time[s]}, then one column for each
 * channel, headed {@code id[unit]}; an empty cell means "no sample then". Stateless.
 *
 * <p>What is written comes back the same: times to one microsecond, values bit for bit. Time
 * increases from row to row, and a row holds one value of a channel; if a channel has two samples
 * in one microsecond, the second is written one microsecond later.
 */
public final class TripTable {
  private TripTable() {}

  /** Reads a table whole or not at all. */
  public static ImportedTable read(Path file) throws TableException {
    refuseOtherKinds(file);
    return new TableReader(file).read();
  }

  /**
   * Writes a table in place of whatever was there; a fault leaves the old file as it was.
   *
   * @param samples in any order; they are sorted by time
   */
  public static void write(Path file, Iterable<Sample> samples, ExportChoice choice)
      throws TableException {
    refuseOtherKinds(file);
    Path target = file.toAbsolutePath();
    if (Files.isDirectory(target)) {
      throw new TableException(
          "Could not write %s: expected the name of a file, found a folder. Add a file name."
              .formatted(file));
    }
    try {
      new NewFile(target).fill(out -> TableWriter.write(out, samples, choice));
    } catch (IOException e) {
      throw new TableException(
          "Could not write %s: expected a folder that takes a file, found %s. Choose another place or make room."
              .formatted(file, FileFault.whileWriting(e, file)),
          e);
    }
  }

  /** Writes a table to wherever text can go; the caller closes it. */
  public static void write(Writer out, Iterable<Sample> samples, ExportChoice choice)
      throws IOException {
    TableWriter.write(out, samples, choice);
  }

  private static void refuseOtherKinds(Path file) throws TableException {
    String name = String.valueOf(file.getFileName()).toLowerCase(Locale.ROOT);
    for (String ending : new String[] {".trip", ".gpx", ".gz"}) {
      if (name.endsWith(ending)) {
        throw new TableException(
            "Could not use %s: expected a trip table such as trip.csv, found a name that ends in %s. This version takes trip tables only."
                .formatted(file, ending));
      }
    }
  }
}
