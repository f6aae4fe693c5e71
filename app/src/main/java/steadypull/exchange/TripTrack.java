package steadypull.exchange;

import java.io.IOException;
import java.io.InterruptedIOException;
import java.io.UncheckedIOException;
import java.util.function.Consumer;
import javax.xml.stream.XMLStreamException;
import steadypull.store.LibraryException;

/**
 * One trip on its way into a file: looked through once for its bounds, then written, so that it is
 * never held as a whole. One thread.
 */
final class TripTrack {
  private static final int SAMPLES_A_LOOK = 4096;

  private final GpxTrip trip;
  private final ExportChoice choice;
  private final TransferWatch watch;
  private final long points;
  private final long impossible;
  private long passed;

  /**
   * Looks through a trip.
   *
   * @param bounds are widened so that the trip is inside
   */
  TripTrack(GpxTrip trip, ExportChoice choice, GpxBounds bounds, TransferWatch watch)
      throws LibraryException {
    this.trip = trip;
    this.choice = choice;
    this.watch = watch;
    TrackPoints look = pass(point -> bounds.include(point.place()));
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
    pass(segments::add);
    if (segments.count > 0) {
      out.close();
    }
    out.close();
    return segments.count;
  }

  private TrackPoints pass(Consumer<TrackPoint> taker) throws LibraryException {
    TrackPoints points = new TrackPoints(trip.start(), choice, taker);
    requireToGoOn();
    trip.samples()
        .pourInto(
            sample -> {
              count();
              points.accept(sample);
            });
    points.finish();
    return points;
  }

  private void count() {
    if (++passed % SAMPLES_A_LOOK == 0) {
      requireToGoOn();
    }
  }

  private void requireToGoOn() {
    if (!watch.goesOn(passed)) {
      throw new UncheckedIOException(new InterruptedIOException("Stopped as asked"));
    }
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
