package steadypull.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import steadypull.exchange.ExportChoice;
import steadypull.exchange.OutgoingFile;
import steadypull.exchange.TripFile;
import steadypull.exchange.TripSamples;
import steadypull.exchange.TripTable;
import steadypull.store.LibraryException;
import steadypull.store.TripLibrary;
import steadypull.store.TripSummary;

/** Writes a trip as a trip table, a trip file or a track. */
@Command(
    name = "export",
    mixinStandardHelpOptions = true,
    header = "Writes a trip as a trip table (CSV), a trip file or a track (GPX).",
    description =
        "Derived channels such as road_grade are written too. A trip file (.trip) holds all that"
            + " belongs to the trip, for another library. A track (.gpx) needs positions; its"
            + " points carry what was measured since the one before. Ctrl-C ends it; the file is"
            + " then as it was. Exit status 1 with a file that was written: the library is damaged,"
            + " and what is missing is told.")
final class ExportCommand implements Callable<Integer> {
  @ParentCommand private @Nullable SteadypullCommand parent;

  @Parameters(paramLabel = "TRIP", description = "Id of the trip, or a unique beginning of it.")
  private String trip = "";

  @Option(
      names = "--to",
      required = true,
      paramLabel = "FILE",
      converter = PlainText.Place.class,
      description = "Where to write: x.csv, x.csv.gz, x.trip, x.gpx or x.gpx.gz.")
  private Path to = Path.of("");

  @Option(names = "--measured-only", description = "Leaves out the derived channels.")
  private boolean measuredOnly;

  @Option(
      names = "--no-positions",
      description =
          "Leaves out latitude and longitude, and of a .trip file what was told of the road ahead.")
  private boolean noPositions;

  @Override
  public Integer call() throws Exception {
    SteadypullCommand main = Parents.require(parent);
    try (TripLibrary library = main.openLibraryToRead()) {
      TripSummary summary = library.find(trip);
      switch (OutgoingFile.of(to)) {
        case OutgoingFile.Table(Path file) -> told(main, file, table(main, library, summary, file));
        case OutgoingFile.Trip(Path file) ->
            told(main, file, whole(main, library, ended(main, library, summary), file));
        case OutgoingFile.Track(Path file) ->
            TrackExport.write(main, library, summary, file, choice());
        case OutgoingFile.Unknown(Path file) -> throw unknown(main, file);
      }
      return DamageWords.tell(main, library.damage(summary.id()));
    }
  }

  private static Misuse unknown(SteadypullCommand main, Path file) {
    return Misuse.of(
        main,
        "export",
        "a name that ends in " + OutgoingFile.ENDINGS,
        Printable.line(file.toString()),
        "Spreadsheets open .csv");
  }

  private static void told(SteadypullCommand main, Path file, long samples) {
    main.err().printf("Wrote %d samples to %s.%n", samples, file);
  }

  private long whole(SteadypullCommand main, TripLibrary library, TripSummary summary, Path file)
      throws Exception {
    TransferProgress progress = new TransferProgress(main.err());
    try (var _ = StopSignals.call(progress::stop)) {
      return TripFile.write(
          library,
          summary,
          file,
          choice(),
          progress.watch("Writing " + file.getFileName(), Math.max(1, summary.samples())));
    } finally {
      progress.finish();
    }
  }

  private long table(SteadypullCommand main, TripLibrary library, TripSummary summary, Path file)
      throws Exception {
    TransferProgress progress = new TransferProgress(main.err());
    TripSamples samples =
        measuredOnly
            ? TripSamples.held(library, summary)
            : TripSamples.withDerived(library, summary);
    try (var _ = StopSignals.call(progress::stop)) {
      return TripTable.<LibraryException>write(
          file,
          samples.channels(),
          samples,
          choice(),
          progress.watch("Writing " + file.getFileName(), Math.max(1, samples.expected())));
    } finally {
      progress.finish();
    }
  }

  private ExportChoice choice() {
    return new ExportChoice(measuredOnly, noPositions);
  }

  /** Opening a library to write brings trips to their end that a crash has left behind. */
  private static TripSummary ended(SteadypullCommand main, TripLibrary library, TripSummary trip)
      throws LibraryException {
    if (trip.sealed()) {
      return trip;
    }
    try (TripLibrary _ = main.openLibrary()) {
      return library.find(trip.id());
    }
  }
}
