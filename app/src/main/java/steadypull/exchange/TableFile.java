package steadypull.exchange;

import java.io.BufferedWriter;
import java.io.IOException;
import java.io.InterruptedIOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.zip.GZIPOutputStream;
import steadypull.channel.Channel;

/** The file that a table is written to; packed if its name ends so. One thread. */
final class TableFile {
  private static final String PACKED = ".gz";
  private static final int BUFFER = 1 << 16;

  /** Samples that wait for an earlier one: some minutes of a live drive. Our choice. */
  static final int LOOK_AHEAD = 20_000;

  private static final int ALL = Integer.MAX_VALUE;

  private final Path file;
  private long written;

  TableFile(Path file) {
    this.file = file;
  }

  /**
   * Writes the whole table or leaves the file as it was.
   *
   * <p>Samples of a drive come in the order of arrival, which is the order of time but for moments;
   * where it is not, the table is written again with all of them in memory.
   *
   * @return how many samples were written
   */
  <X extends Exception> long write(
      List<Channel> channels, SampleSource<X> samples, ExportChoice choice, TransferWatch watch)
      throws IOException, TableException, X {
    try {
      try {
        return write(channels, samples, choice, watch, canBeginAnew() ? LOOK_AHEAD : ALL);
      } catch (TimeOrder.TooLate outOfOrder) {
        return write(channels, samples, choice, watch, ALL);
      }
    } catch (UncheckedIOException e) {
      throw e.getCause() == null ? new IOException(e) : e.getCause();
    } catch (InterruptedIOException stopped) {
      throw new TableException(
          "Stopped writing %s, as asked. It is as it was before.".formatted(CellPlace.shown(file)),
          stopped);
    }
  }

  private <X extends Exception> long write(
      List<Channel> channels,
      SampleSource<X> samples,
      ExportChoice choice,
      TransferWatch watch,
      int lookAhead)
      throws IOException, X {
    new NewFile(file.toAbsolutePath())
        .<X>fillBytes(
            bytes -> {
              try (Writer out = text(bytes)) {
                written = TableWriter.write(out, channels, samples, choice, watch, lookAhead);
              }
            });
    return written;
  }

  /** What a pipe has taken is gone. */
  private boolean canBeginAnew() {
    return !Files.exists(file) || Files.isRegularFile(file);
  }

  private Writer text(OutputStream bytes) throws IOException {
    String name = String.valueOf(file.getFileName()).toLowerCase(Locale.ROOT);
    OutputStream out = name.endsWith(PACKED) ? new GZIPOutputStream(bytes, BUFFER) : bytes;
    return new BufferedWriter(new OutputStreamWriter(out, StandardCharsets.UTF_8), BUFFER);
  }
}
