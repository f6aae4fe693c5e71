package steadypull.exchange;

import java.io.IOException;
import java.io.UncheckedIOException;
import javax.xml.stream.XMLStreamException;
import steadypull.store.LibraryException;

/**
 * One trip on its way into a file: looked through once for its bounds, then written, so that it is
 * never held as a whole. One thread.
 */
final class TripTrack {
  private final GpxTrip trip;
  private final ExportChoice choice;
  private final GpxBounds bounds;
  private final long points;
  private final long impossible;

  /**
   * Looks through a trip.
   *
   * @param bounds are widened so that the trip is inside
   */
  TripTrack(GpxTrip trip, ExportChoice choice, GpxBounds bounds) throws LibraryException {
    this.trip = trip;
    this.choice = choice;
    this.bounds = bounds;
    TrackPoints look =
        new TrackPoints(trip.start(), choice, point -> this.bounds.include(point.place()));
    trip.samples().replay(look);
    look.finish();
    points = look.places();
    impossible = look.impossible();
  }

  String description() {
    return trip.description();
  }

  /** How many points the track has; 0 if the trip knows no positions. */
  long points() {
    return points;
  }

  /** How many positions are left out because there is no such place. */
  long impossible() {
    return impossible;
  }

  /**
   * Writes the track. What a trip that is being recorded has gained since it was looked through
   * stays out, because the bounds do not know of it.
   *
   * @return how many segments it has
   */
  long write(GpxWriter out) throws XMLStreamException, LibraryException {
    out.beginTrack(trip.name(), trip.description());
    Segments segments = new Segments(out);
    TrackPoints track = new TrackPoints(trip.start(), choice, segments::add);
    trip.samples().replay(track);
    track.finish();
    if (segments.count > 0) {
      out.close();
    }
    out.close();
    return segments.count;
  }

  /** Writes points, in a new segment after every gap. */
  private final class Segments {
    private final GpxWriter out;
    private long count;
    private long written;

    Segments(GpxWriter out) {
      this.out = out;
    }

    void add(TrackPoint point) {
      if (written == points) {
        return;
      }
      try {
        write(point);
      } catch (XMLStreamException e) {
        throw new UncheckedIOException(new IOException(e));
      }
    }

    private void write(TrackPoint point) throws XMLStreamException {
      if (point.isAfterGap()) {
        if (count > 0) {
          out.close();
        }
        out.beginSegment();
        count++;
      }
      out.point(point.place(), point.values());
      written++;
    }
  }
}
