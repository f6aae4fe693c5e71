package steadypull.cli;

import java.nio.file.Path;
import steadypull.exchange.ExportChoice;
import steadypull.exchange.GpxFile;
import steadypull.exchange.GpxTrip;
import steadypull.exchange.TableException;
import steadypull.exchange.WrittenTracks;
import steadypull.store.LibraryException;
import steadypull.store.TripLibrary;
import steadypull.store.TripSummary;

/** Writes a trip as a track (GPX). One thread. */
final class TrackExport {
  private TrackExport() {}

  /** Writes the track and says so on standard error. */
  static void write(
      SteadypullCommand main, TripLibrary library, TripSummary trip, Path file, ExportChoice choice)
      throws TableException, LibraryException {
    TransferProgress progress = new TransferProgress(main.err());
    WrittenTracks written;
    try (var _ = StopSignals.call(progress::stop)) {
      written =
          GpxFile.write(
              file,
              main.program().wall().instant(),
              choice,
              progress.watch("Writing " + file.getFileName(), Math.max(1, 2 * trip.samples())),
              GpxTrip.of(library, trip));
    } finally {
      progress.finish();
    }
    if (written.impossibleLeftOut() > 0) {
      main.err()
          .printf(
              "Left out %d positions that lie nowhere on the earth.%n",
              written.impossibleLeftOut());
    }
    main.err()
        .printf(
            "Wrote %d points in %d unbroken %s to %s.%n",
            written.points(),
            written.segments(),
            written.segments() == 1 ? "stretch" : "stretches",
            file);
  }
}
