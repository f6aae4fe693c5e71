package steadypull.store.column;

import java.util.BitSet;
import java.util.Optional;
import steadypull.store.column.PixelLine.Beside;

/**
 * Draws a trip: what each column of pixels shows of a channel, from the overviews where a column
 * spans a bucket and from the samples themselves where it is narrower. Where buckets fall on
 * columns the line is exact; otherwise it lies beside the exact one by one column at most. No value
 * is lost.
 *
 * <p>Keeps what it unpacked, up to some tens of megabytes. A channel that is damaged in a segment
 * leaves that span empty and is told by {@link #damaged}; for a damaged overview the samples stand
 * in. One thread.
 */
public final class TripLines {
  private static final int OVERVIEW_OCTETS = 48 << 20;
  private static final int SEGMENT_OCTETS = 32 << 20;

  private final SegmentSource source;
  private final Unpacked<Overview> overviews = new Unpacked<>(OVERVIEW_OCTETS);
  private final Unpacked<Segment> segments = new Unpacked<>(SEGMENT_OCTETS);
  private final BitSet damaged = new BitSet();

  /** Lines of the trip whose segments the source has. */
  public TripLines(SegmentSource source) {
    this.source = source;
  }

  /**
   * What to draw of a channel.
   *
   * @param channel index in the trip's list of channels
   * @param fromMicros first moment of the window, microseconds since the start of the trip
   * @param toMicros the first moment after the window
   * @param pixelColumns width of the window in pixels, at least 1
   */
  public PixelLine line(int channel, long fromMicros, long toMicros, int pixelColumns) {
    PixelWindow window = new PixelWindow(fromMicros, toMicros, pixelColumns);
    PixelLine line = new PixelLine(pixelColumns);
    LineDrawing drawing = new LineDrawing(window, line);
    int count = source.count();
    for (int number = 0; number < count; number++) {
      if (source.firstMicros(number) < toMicros && source.lastMicros(number) >= fromMicros) {
        draw(number, channel, window, drawing);
      }
    }
    line.lieBetween(before(channel, fromMicros), after(channel, toMicros));
    return line;
  }

  /** The segments of which something could not be read so far: their numbers, set. */
  public BitSet damaged() {
    return (BitSet) damaged.clone();
  }

  private void draw(int number, int channel, PixelWindow window, LineDrawing drawing) {
    try {
      Buckets buckets = buckets(number, channel);
      if (!window.columnsSpan(buckets.widthMicros())) {
        drawing.samples(column(number, channel));
      } else if (drawing.buckets(buckets)) {
        drawing.cut(column(number, channel), buckets.widthMicros());
      }
    } catch (DamagedSegmentException e) {
      // The rest of the trip is drawn; who asks is told by damaged().
      damaged.set(number);
    }
  }

  private Optional<Beside> before(int channel, long timeMicros) {
    for (int number = source.count() - 1; number >= 0; number--) {
      if (source.firstMicros(number) < timeMicros) {
        Optional<Beside> found = columnIfReadable(number, channel).lastBefore(timeMicros);
        if (found.isPresent()) {
          return found;
        }
      }
    }
    return Optional.empty();
  }

  private Optional<Beside> after(int channel, long timeMicros) {
    for (int number = 0; number < source.count(); number++) {
      if (source.lastMicros(number) >= timeMicros) {
        Optional<Beside> found = columnIfReadable(number, channel).firstFrom(timeMicros);
        if (found.isPresent()) {
          return found;
        }
      }
    }
    return Optional.empty();
  }

  /** The samples of a channel; none where it does not occur or cannot be read. */
  private Column columnIfReadable(int number, int channel) {
    try {
      // The overview is smaller, and kept: where it has no bucket there is nothing to unpack.
      return buckets(number, channel).size() == 0 ? Column.EMPTY : column(number, channel);
    } catch (DamagedSegmentException e) {
      damaged.set(number);
      return Column.EMPTY;
    }
  }

  /** The buckets of a channel; where the overview is damaged, from the samples. */
  private Buckets buckets(int number, int channel) throws DamagedSegmentException {
    Overview kept = overviews.find(number);
    if (kept != null) {
      return kept.buckets(channel);
    }
    try {
      Overview unpacked = Overview.decode(source.overview(number));
      overviews.keep(number, unpacked, unpacked.octets());
      return unpacked.buckets(channel);
    } catch (DamagedSegmentException e) {
      damaged.set(number);
      return BucketMaker.of(column(number, channel).byTime());
    }
  }

  private Column column(int number, int channel) throws DamagedSegmentException {
    Segment kept = segments.find(number);
    if (kept == null) {
      kept = Segment.decodeReadable(source.segment(number));
      segments.keep(number, kept, kept.octets());
    }
    if (kept.hasLostStretches()) {
      damaged.set(number);
    }
    return kept.column(channel);
  }
}
