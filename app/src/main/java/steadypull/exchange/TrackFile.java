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
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.zip.GZIPOutputStream;
import javax.xml.stream.XMLStreamException;
import org.jspecify.annotations.Nullable;
import steadypull.store.LibraryException;

/** A file in which trips become tracks. One thread. */
final class TrackFile {
  private final Path file;
  private final Instant created;
  private final ExportChoice choice;
  private final TransferWatch watch;
  private final GpxBounds bounds = new GpxBounds();
  private long segments;

  TrackFile(Path file, Instant created, ExportChoice choice, TransferWatch watch) {
    this.file = file;
    this.created = created;
    this.choice = choice;
    this.watch = watch;
  }

  WrittenTracks write(GpxTrip... trips) throws TableException, LibraryException {
    if (choice.isWithoutPositions()) {
      throw refusal(
          "positions to write",
          "that they are to be left out",
          "Leave them in, or write a trip table such as trip.csv.");
    }
    if (Files.isDirectory(file)) {
      throw refusal("the name of a file", "a folder", "Add a file name.");
    }
    List<TripTrack> tracks = lookThrough(trips);
    fill(tracks);
    return new WrittenTracks(
        tracks.stream().mapToLong(TripTrack::points).sum(),
        segments,
        tracks.stream().mapToLong(TripTrack::impossible).sum());
  }

  private List<TripTrack> lookThrough(GpxTrip... trips) throws TableException, LibraryException {
    List<TripTrack> tracks = new ArrayList<>();
    try {
      for (GpxTrip trip : trips) {
        tracks.add(lookThrough(trip));
      }
      return tracks;
    } catch (UncheckedIOException e) {
      throw fault(ioFault(e));
    }
  }

  private TripTrack lookThrough(GpxTrip trip) throws TableException, LibraryException {
    TripTrack track = new TripTrack(trip, choice, bounds, watch);
    if (track.points() == 0) {
      throw refusal(
          "a trip with latitude and longitude of the same moment",
          "none in \"" + trip.description() + "\"",
          "Record with a satellite receiver, or write a trip table such as trip.csv.");
    }
    return track;
  }

  private void fill(List<TripTrack> tracks) throws TableException, LibraryException {
    try {
      new NewFile(file.toAbsolutePath())
          .<IOException>fillBytes(
              bytes -> {
                try (Writer out = text(bytes)) {
                  write(tracks, out);
                }
              });
    } catch (LibraryTrouble e) {
      throw e.trouble;
    } catch (IOException e) {
      throw fault(e);
    }
  }

  private Writer text(OutputStream bytes) throws IOException {
    String name = String.valueOf(file.getFileName()).toLowerCase(Locale.ROOT);
    OutputStream out = name.endsWith(".gz") ? new GZIPOutputStream(bytes, 1 << 16) : bytes;
    return new BufferedWriter(new OutputStreamWriter(out, StandardCharsets.UTF_8));
  }

  private TableException fault(IOException fault) {
    return switch (fault) {
      case InterruptedIOException stopped ->
          new TableException(
              "Stopped writing %s, as asked. It is as it was before."
                  .formatted(CellPlace.shown(file)),
              stopped);
      default ->
          new TableException(
              message(
                  "a folder that takes a file",
                  FileFault.whileWriting(fault, file),
                  "Choose another place or make room."),
              fault);
    };
  }

  private void write(List<TripTrack> tracks, Writer out) throws IOException {
    try {
      GpxWriter gpx = new GpxWriter(out);
      gpx.begin();
      gpx.metadata(created, bounds);
      for (TripTrack track : tracks) {
        segments += track.write(gpx);
      }
      gpx.close();
      gpx.end();
    } catch (XMLStreamException e) {
      throw ioFault(e);
    } catch (UncheckedIOException e) {
      throw ioFault(e);
    } catch (LibraryException e) {
      throw new LibraryTrouble(e);
    }
  }

  /** What went wrong with the file is told as such, not as a matter of XML. */
  private static IOException ioFault(Exception fault) {
    IOException deepest = new IOException(fault);
    for (@Nullable Throwable cause = fault; cause != null; cause = cause.getCause()) {
      if (cause instanceof IOException found) {
        deepest = found;
      }
    }
    return deepest;
  }

  private TableException refusal(String expected, String found, String advice) {
    return new TableException(message(expected, found, advice));
  }

  private String message(String expected, String found, String advice) {
    return "Could not write %s: expected %s, found %s. %s"
        .formatted(CellPlace.shown(file), expected, found, advice);
  }

  /** Carries what went wrong with the library through the writing of a file. */
  private static final class LibraryTrouble extends IOException {
    private static final long serialVersionUID = 1L;
    private final transient LibraryException trouble;

    LibraryTrouble(LibraryException trouble) {
      super(trouble);
      this.trouble = trouble;
    }
  }
}
