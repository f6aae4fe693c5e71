package steadypull.store.column;

import java.util.BitSet;

/**
 * Draws a trip: what each column of pixels shows of a channel, from the overviews where a column
 * spans a bucket and from the samples themselves where it is narrower. Where buckets fall on
 * columns the line is exact; otherwise it lies beside the exact one by one column at most. No value
 * is lost.
 *
 * <p>Keeps what it unpacked, up to some tens of megabytes. A segment that is damaged leaves its
 * span empty and is told by {@link #damaged}. One thread.
 */
public final class TripLines {
  private static final int OVERVIEW_OCTETS = 48 << 20;
  private static final int SEGMENT_OCTETS = 24 << 20;

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
    for (int number = 0; number < source.count(); number++) {
      if (source.firstMicros(number) < toMicros && source.lastMicros(number) >= fromMicros) {
        draw(number, channel, window, line);
      }
    }
    return line;
  }

  /** The segments that could not be read so far: their numbers, set. */
  public BitSet damaged() {
    return (BitSet) damaged.clone();
  }

  private void draw(int number, int channel, PixelWindow window, PixelLine line) {
    try {
      Buckets buckets = overview(number).buckets(channel);
      if (buckets.size() == 0) {
        return;
      }
      if (window.columnsSpan(buckets.widthMicros())) {
        drawBuckets(number, channel, buckets, window, line);
      } else {
        drawSamples(segment(number).column(channel), window, line);
      }
    } catch (DamagedSegmentException e) {
      // The rest of the trip is drawn; who asks is told by damaged().
      damaged.set(number);
    }
  }

  private void drawBuckets(
      int number, int channel, Buckets buckets, PixelWindow window, PixelLine line)
      throws DamagedSegmentException {
    boolean isCut = false;
    for (int i = 0; i < buckets.size(); i++) {
      long start = buckets.startMicros(i);
      boolean isBeyond = start >= window.toMicros();
      boolean isBefore = start + buckets.widthMicros() <= window.fromMicros();
      if (isBeyond || isBefore) {
        continue;
      }
      if (window.holds(start) && window.holds(start + buckets.widthMicros() - 1)) {
        drawBucket(buckets, i, window, line);
      } else {
        isCut = true;
      }
    }
    if (isCut) {
      drawCut(segment(number).column(channel), buckets, window, line);
    }
  }

  /** A bucket lies on two columns at most; where its extremes lie is not known, if so. */
  private static void drawBucket(Buckets buckets, int i, PixelWindow window, PixelLine line) {
    int first = window.column(buckets.firstMicros[i]);
    int last = window.column(buckets.lastMicros[i]);
    int middle = window.column(buckets.startMicros(i) + buckets.widthMicros() / 2);
    line.addFirst(first, buckets.firstMicros[i], buckets.firsts[i]);
    line.addLast(last, buckets.lastMicros[i], buckets.lasts[i]);
    line.widen(Math.clamp(middle, first, last), buckets.leasts[i], buckets.greatests[i]);
  }

  /** Draws the samples of the buckets that the window cuts. */
  private static void drawCut(Column samples, Buckets buckets, PixelWindow window, PixelLine line) {
    long width = buckets.widthMicros();
    long wholeFrom = Math.ceilDiv(window.fromMicros(), width) * width;
    long wholeTo = Math.floorDiv(window.toMicros(), width) * width;
    for (int i = 0; i < samples.size(); i++) {
      long timeMicros = samples.timeMicros(i);
      if (window.holds(timeMicros) && (timeMicros < wholeFrom || timeMicros >= wholeTo)) {
        line.add(window.column(timeMicros), timeMicros, samples.value(i));
      }
    }
  }

  private static void drawSamples(Column samples, PixelWindow window, PixelLine line) {
    for (int i = 0; i < samples.size(); i++) {
      if (window.holds(samples.timeMicros(i))) {
        line.add(window.column(samples.timeMicros(i)), samples.timeMicros(i), samples.value(i));
      }
    }
  }

  private Overview overview(int number) throws DamagedSegmentException {
    Overview kept = overviews.find(number);
    if (kept == null) {
      kept = Overview.decode(source.overview(number));
      overviews.keep(number, kept, kept.octets());
    }
    return kept;
  }

  private Segment segment(int number) throws DamagedSegmentException {
    Segment kept = segments.find(number);
    if (kept == null) {
      kept = Segment.decode(source.segment(number));
      segments.keep(number, kept, kept.octets());
    }
    return kept;
  }
}
