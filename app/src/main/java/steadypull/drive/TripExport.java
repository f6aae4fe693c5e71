package steadypull.drive;

import java.nio.file.Path;
import java.time.Instant;
import java.util.function.Consumer;
import steadypull.channel.Sample;
import steadypull.exchange.ExportChoice;
import steadypull.exchange.GpxFile;
import steadypull.exchange.GpxTrip;
import steadypull.exchange.OutgoingFile;
import steadypull.exchange.TableException;
import steadypull.exchange.TransferWatch;
import steadypull.exchange.TripFile;
import steadypull.exchange.TripTable;
import steadypull.store.LibraryException;
import steadypull.store.TripEntry;
import steadypull.store.TripLibrary;
import steadypull.store.TripSummary;

/** Writes a trip in whichever form the file's name tells. */
final class TripExport {
  private TripExport() {}

  static void write(TripLibrary library, TripSummary trip, Path file, Instant now)
      throws TableException, LibraryException {
    switch (OutgoingFile.of(file)) {
      case OutgoingFile.Table(Path table) ->
          TripTable.<LibraryException>write(
              table,
              trip.channels(),
              taker -> pour(library, trip.id(), taker),
              ExportChoice.ALL,
              TransferWatch.NONE);
      case OutgoingFile.Trip(Path whole) -> TripFile.write(library, trip, whole, ExportChoice.ALL);
      case OutgoingFile.Track(Path track) ->
          GpxFile.write(
              track, now, ExportChoice.ALL, TransferWatch.NONE, GpxTrip.of(library, trip));
    }
  }

  private static void pour(TripLibrary library, String tripId, Consumer<Sample> taker)
      throws LibraryException {
    library.replay(
        tripId,
        entry -> {
          if (entry instanceof TripEntry.OfSample(Sample sample)) {
            taker.accept(sample);
          }
        });
  }
}
