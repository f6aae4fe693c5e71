package steadypull.exchange;

import java.io.IOException;
import java.io.InterruptedIOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.function.Predicate;
import steadypull.channel.Channel;
import steadypull.store.LibraryException;
import steadypull.store.PortableTrip;
import steadypull.store.TripLibrary;
import steadypull.store.TripSummary;

/** Trip files ({@code .trip}): a trip library that holds one trip. Stateless. */
public final class TripFile {
  private TripFile() {}

  /**
   * Writes a trip in place of whatever was there; a fault leaves the old file as it was.
   *
   * @param library holds the trip
   * @param watch hears of the samples that were looked at
   * @return how many samples were written
   */
  public static long write(
      TripLibrary library, TripSummary trip, Path file, ExportChoice choice, TransferWatch watch)
      throws TableException, LibraryException {
    if (!trip.sealed()) {
      throw new TableException(
          "Could not write %s: expected a trip that has ended, found %s still being recorded. Export it when it has ended, or as a table now."
              .formatted(file, trip.id()));
    }
    if (Files.isDirectory(file)) {
      throw new TableException(
          "Could not write %s: expected the name of a file, found a folder. Add a file name."
              .formatted(file));
    }
    long[] samples = {0};
    try {
      new NewFile(file.toAbsolutePath())
          .<LibraryException>fillBytes(
              out ->
                  samples[0] = PortableTrip.write(library, trip, new Watched(choice, watch), out));
    } catch (UncheckedIOException stopped) {
      if (!(stopped.getCause() instanceof InterruptedIOException)) {
        throw stopped;
      }
      throw new TableException(
          "Stopped writing %s, as asked. It is as it was before.".formatted(file), stopped);
    } catch (IOException e) {
      throw new TableException(
          "Could not write %s: expected a folder that takes a file, found %s. Choose another place or make room."
              .formatted(file, FileFault.whileWriting(e, file)),
          e);
    }
    return samples[0];
  }

  /** Chooses channels, and ends the writing where the watch does. */
  private static final class Watched implements Predicate<Channel> {
    private static final int SAMPLES_A_LOOK = 4096;

    private final ExportChoice choice;
    private final TransferWatch watch;
    private long looked;

    Watched(ExportChoice choice, TransferWatch watch) {
      this.choice = choice;
      this.watch = watch;
    }

    @Override
    public boolean test(Channel channel) {
      if (looked++ % SAMPLES_A_LOOK == 0 && !watch.goesOn(looked)) {
        throw new UncheckedIOException(new InterruptedIOException("Stopped as asked"));
      }
      return choice.includes(channel);
    }
  }

  /**
   * Opens a trip file; see {@link PortableTrip#open}.
   *
   * @throws TableException if there is no plain file of that name
   */
  public static PortableTrip open(Path file) throws TableException, LibraryException {
    requirePlainFile(file);
    return PortableTrip.open(file);
  }

  /** A link may point at what its owner alone may read, and a device has no end. */
  private static void requirePlainFile(Path file) throws TableException {
    try {
      BasicFileAttributes found =
          Files.readAttributes(file, BasicFileAttributes.class, LinkOption.NOFOLLOW_LINKS);
      if (!found.isRegularFile()) {
        throw new TableException(refusal(file, kind(found)));
      }
    } catch (NoSuchFileException e) {
      throw new TableException(refusal(file, "no file of that name"), e);
    } catch (IOException e) {
      throw new TableException(refusal(file, FileFault.whileReading(e)), e);
    }
  }

  private static String refusal(Path file, String found) {
    return "Could not read %s: expected a trip file, found %s. Nothing was imported; name the file itself."
        .formatted(file, found);
  }

  private static String kind(BasicFileAttributes found) {
    if (found.isDirectory()) {
      return "a folder";
    }
    return found.isSymbolicLink() ? "a link to another place" : "no plain file";
  }
}
