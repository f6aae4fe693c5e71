package steadypull.exchange;

import java.io.BufferedInputStream;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.PushbackInputStream;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.zip.GZIPInputStream;
import javax.xml.stream.XMLStreamException;
import steadypull.road.Route;
import steadypull.road.RouteSegment;
import steadypull.store.LibraryException;

/**
 * Routes and tracks as files in GPX, the exchange format of satellite receivers: 1.1 is read and
 * written; 1.0, which has the same elements as far as a route needs them, is read. Files are read
 * packed (gzip) too. Nothing but the named file is ever opened. Stateless, any thread.
 */
public final class GpxFile {
  private static final byte[] GZIP = {0x1F, (byte) 0x8B};

  private GpxFile() {}

  /** Reads all routes and tracks of a file, or refuses it whole. */
  public static ImportedRoutes read(Path file) throws TableException {
    if (Files.isDirectory(file)) {
      throw new TableException(
          "Could not read %s: expected a GPX file, found a folder. Name a file."
              .formatted(CellPlace.shown(file)));
    }
    try (InputStream bytes = open(file)) {
      return new GpxReader(file, bytes).read();
    } catch (IOException e) {
      throw new TableException(
          "Could not read %s: expected a GPX file, found %s. Nothing was taken; check the path."
              .formatted(CellPlace.shown(file), FileFault.whileReading(e)),
          e);
    }
  }

  /** Reads a route that {@link #text} has written. */
  public static Route read(String name, String text) throws TableException {
    InputStream bytes = new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8));
    return new GpxReader(Path.of(name), bytes).read().routes().getFirst();
  }

  /** A route as GPX 1.1, always the same for the same route. */
  public static String text(Route route) {
    StringWriter text = new StringWriter();
    try {
      GpxWriter out = new GpxWriter(text);
      out.begin();
      out.beginTrack(route.name(), "");
      for (RouteSegment segment : route.segments()) {
        out.beginSegment();
        for (int point = 0; point < segment.size(); point++) {
          out.point(segment.point(point), List.of());
        }
        out.close();
      }
      out.close();
      out.end();
      return text.toString();
    } catch (XMLStreamException e) {
      throw new IllegalStateException("Text takes everything", e);
    }
  }

  /**
   * Writes trips as tracks in place of whatever was there; a fault leaves the old file as it was. A
   * new segment begins wherever positions are further apart than a gap of a trip is long.
   *
   * @param created the moment of writing
   * @param watch hears of every trip's samples twice, for a trip is looked through before
   * @param trips one or more, each with positions
   */
  public static WrittenTracks write(
      Path file, Instant created, ExportChoice choice, TransferWatch watch, GpxTrip... trips)
      throws TableException, LibraryException {
    return new TrackFile(file, created, choice, watch).write(trips);
  }

  /** The bytes of a file, unpacked where it is packed; the caller closes them. */
  static InputStream open(Path file) throws IOException {
    InputStream bytes = Files.newInputStream(file);
    try {
      PushbackInputStream start =
          new PushbackInputStream(new BufferedInputStream(bytes, 1 << 16), GZIP.length);
      byte[] first = start.readNBytes(GZIP.length);
      start.unread(first);
      return Arrays.equals(first, GZIP) ? new GZIPInputStream(start, 1 << 16) : start;
    } catch (IOException e) {
      bytes.close();
      throw e;
    }
  }
}
