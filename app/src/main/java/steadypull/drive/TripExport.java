package steadypull.drive;

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

/** Writes a trip in whichever form the file's name tells. */
final class TripExport {
  private TripExport() {}

  static void write(TripLibrary library, TripSummary trip, Path file, Instant now)
      throws TableException, LibraryException, DriveException {
    switch (OutgoingFile.of(file)) {
      case OutgoingFile.Table(Path table) -> {
        TripSamples samples = TripSamples.withDerived(library, trip);
        TripTable.<LibraryException>write(
            table, samples.channels(), samples, ExportChoice.ALL, TransferWatch.NONE);
      }
      case OutgoingFile.Trip(Path whole) -> TripFile.write(library, trip, whole, ExportChoice.ALL);
      case OutgoingFile.Track(Path track) ->
          GpxFile.write(
              track, now, ExportChoice.ALL, TransferWatch.NONE, GpxTrip.of(library, trip));
      case OutgoingFile.Unknown(Path unknown) ->
          throw new DriveException(
              "Could not export to %s: expected a name that ends in %s. Choose such a name."
                  .formatted(unknown.getFileName(), OutgoingFile.ENDINGS),
              null);
    }
  }
}
