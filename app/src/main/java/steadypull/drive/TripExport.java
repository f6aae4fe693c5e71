package steadypull.drive;

import java.io.InterruptedIOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.time.Instant;
import steadypull.exchange.ExportChoice;
import steadypull.exchange.GpxFile;
import steadypull.exchange.GpxTrip;
import steadypull.exchange.OutgoingFile;
import steadypull.exchange.TableException;
import steadypull.exchange.TransferWatch;
import steadypull.exchange.TripFile;
import steadypull.exchange.TripSamples;
import steadypull.exchange.TripTable;
import steadypull.store.LibraryException;
import steadypull.store.TripLibrary;
import steadypull.store.TripSummary;

/** Writes a trip in whichever form the file's name tells. One use, one thread. */
final class TripExport {
  private final TripLibrary library;
  private final TripSummary trip;
  private final ExportWatch watch;
  private boolean isStopped;

  TripExport(TripLibrary library, TripSummary trip, ExportWatch watch) {
    this.library = library;
    this.trip = trip;
    this.watch = watch;
  }

  /** Writes it, or leaves what was there as it was. */
  ExportEnd write(ExportTarget target, Instant now) throws DriveException {
    try {
      writeWhole(target.file(), new ExportChoice(false, target.isWithoutPositions()), now);
      return new ExportEnd.Written(library.damage(trip.id()));
    } catch (LibraryException | TableException refused) {
      if (isStopped) {
        return new ExportEnd.Stopped();
      }
      throw new DriveException(FaultText.of(refused), refused);
    } catch (UncheckedIOException stopped) {
      if (isStopped) {
        return new ExportEnd.Stopped();
      }
      throw stopped;
    }
  }

  private void writeWhole(Path file, ExportChoice choice, Instant now)
      throws TableException, LibraryException, DriveException {
    switch (OutgoingFile.of(file)) {
      case OutgoingFile.Table(Path table) -> {
        TripSamples samples = TripSamples.withDerived(library, trip, this::look);
        TripTable.<LibraryException>write(
            table, samples.channels(), samples, choice, share(samples.expected()));
      }
      case OutgoingFile.Trip(Path whole) ->
          TripFile.write(library, trip, whole, choice, share(trip.samples()));
      case OutgoingFile.Track(Path track) ->
          GpxFile.write(track, now, choice, share(2 * trip.samples()), GpxTrip.of(library, trip));
      case OutgoingFile.Unknown(Path unknown) ->
          throw new DriveException(
              "Could not export to %s: expected a name that ends in %s. Choose such a name."
                  .formatted(unknown.getFileName(), OutgoingFile.ENDINGS),
              null);
    }
  }

  private TransferWatch share(long total) {
    return done -> goesOn(Math.min(1, (double) done / Math.max(1, total)));
  }

  private boolean goesOn(double share) {
    isStopped = !watch.goesOn(share);
    return !isStopped;
  }

  private void look() {
    if (!goesOn(0)) {
      throw new UncheckedIOException(new InterruptedIOException("Stopped as asked"));
    }
  }
}
