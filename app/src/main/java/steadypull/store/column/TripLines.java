package steadypull.store.column;

import java.util.BitSet;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import steadypull.store.column.PixelLine.Beside;

/**
 * Draws a trip: what each column of pixels shows of a channel, from the overviews where a column
 * spans a bucket and from the samples themselves where it is narrower. Where buckets fall on
 * columns the line is exact; otherwise it lies beside the exact one by one column at most. No value
 * is lost.
 *
 * <p>Keeps what it unpacked, up to some tens of megabytes. A channel that is damaged in a segment
 * leaves that span empty and is told by {@link #damaged}; for a damaged overview the samples stand
 * in. One thread asks; unpacking is shared out to all cores meanwhile.
 */
public final class TripLines {
  private static final int OVERVIEW_OCTETS = 48 << 20;

  /** Enough for ten hours; unpacked they take about a sixth of their samples' room. */
  private static final int OVERVIEWS_AT_ONCE = 128;

  /** Ten hours of 20 channels at 5 Hz take 58 million. */
  private static final int SEGMENT_OCTETS = 64 << 20;

  /** Enough for every core; of the usual length they take 17 million octets. */
  private static final int SEGMENTS_AT_ONCE = 32;

  /** 32 768 samples. */
  private static final int USUAL_SEGMENT_OCTETS = 1 << 19;

  /** Few enough that who asks for a line meanwhile hardly waits. */
  static final int SEGMENTS_AT_A_STEP = 6;

  /** Of the memory that the program may have, at most one part in so many. */
  private static final int SHARE_OF_MEMORY = 8;

  private static final BitSet NO_OTHERS = new BitSet();
  private static final Buckets NO_BUCKETS = new Buckets(0, 0);

  private final SegmentSource source;
  private final Pieces<Overview> overviews;
  private final Pieces<SegmentColumns> segments;
  private final ReadingAhead ahead;

  /** Segments of which samples were asked for that are lost, while others can be read. */
  private final BitSet lost = new BitSet();

  /** What could be read of each segment; of one that was damaged as a whole, nothing. */
  private final Map<Integer, Optional<SegmentState>> states = new HashMap<>();

  /** Lines of the trip whose segments the source has. */
  public TripLines(SegmentSource source) {
    this.source = source;
    this.overviews =
        new Pieces<>(
            source::overviews,
            TripLines::overview,
            (_, _) -> {},
            OVERVIEWS_AT_ONCE,
            OVERVIEW_OCTETS);
    this.segments =
        new Pieces<>(
            source::segments,
            TripLines::segment,
            this::examined,
            SEGMENTS_AT_ONCE,
            segmentOctets());
    this.ahead = new ReadingAhead(segments, source.count(), segmentOctets() / USUAL_SEGMENT_OCTETS);
  }

  private static int segmentOctets() {
    return (int) Math.min(SEGMENT_OCTETS, Runtime.getRuntime().maxMemory() / SHARE_OF_MEMORY);
  }

  private static Pieces.Piece<Overview> overview(byte[] bytes) throws DamagedSegmentException {
    Overview overview = Overview.decode(bytes);
    return new Pieces.Piece<>(overview, overview.octets());
  }

  private static Pieces.Piece<SegmentColumns> segment(byte[] bytes) throws DamagedSegmentException {
    SegmentColumns columns = SegmentColumns.of(Segment.decodeReadable(bytes));
    return new Pieces.Piece<>(columns, columns.octets());
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
    draw(channel, new LineDrawing(window, line), inside(window));
    line.lieBetween(before(channel, fromMicros), after(channel, toMicros));
    return line;
  }

  /**
   * What is known of a line without unpacking any samples, and without reading once the whole trip
   * has been drawn: for the moment that {@link #line} takes.
   */
  public KnownLine known(int channel, long fromMicros, long toMicros, int pixelColumns) {
    PixelWindow window = new PixelWindow(fromMicros, toMicros, pixelColumns);
    PixelLine line = new PixelLine(pixelColumns);
    LineDrawing drawing = new LineDrawing(window, line);
    BitSet inside = inside(window);
    boolean isExact = true;
    for (int number = inside.nextSetBit(0); number >= 0; number = inside.nextSetBit(number + 1)) {
      Overview overview = overviews.find(number, inside);
      Buckets buckets = overview == null ? NO_BUCKETS : overview.buckets(channel);
      if (overview != null && !drawing.needsSamples(buckets)) {
        drawing.draw(buckets);
      } else {
        SegmentColumns samples = segments.findKept(number);
        if (samples == null) {
          drawing.drawBounds(buckets);
          isExact = false;
        } else {
          drawing.draw(buckets, column(samples, number, channel));
        }
      }
    }
    if (isExact) {
      line.lieBetween(before(channel, fromMicros), after(channel, toMicros));
    }
    return new KnownLine(line, isExact);
  }

  /**
   * Takes one step of having the samples in a window and around it unpacked on other threads, so
   * that drawing them waits for nothing: of the nearest that are not there a few are read. As many
   * segments as memory allows are kept, those beside the window first.
   *
   * @return whether a further step would read more
   */
  public boolean readAhead(long fromMicros, long toMicros) {
    return ahead.step(inside(new PixelWindow(fromMicros, toMicros, 1)));
  }

  /**
   * Takes one step of finding out what can be read of the trip; what was unpacked for drawing is
   * not read once more.
   *
   * @return whether there is more to find out
   */
  public boolean examine() {
    int step = 0;
    for (int number = 0; number < source.count(); number++) {
      if (!states.containsKey(number)) {
        if (step++ == SEGMENTS_AT_A_STEP) {
          return true;
        }
        examine(number);
      }
    }
    return false;
  }

  private void examine(int number) {
    if (segments.findKept(number) == null) {
      segments.look(number);
    }
  }

  /** What could be read of a segment; empty if nothing could, or if it is not known yet. */
  public Optional<SegmentState> state(int number) {
    return states.getOrDefault(number, Optional.empty());
  }

  private void examined(int number, @Nullable SegmentColumns segment) {
    states.put(number, Optional.ofNullable(segment).map(SegmentColumns::state));
  }

  /** Ends the unpacking that nobody has asked for yet. */
  public void leave() {
    segments.leave();
    overviews.leave();
  }

  private void draw(int channel, LineDrawing drawing, BitSet inside) {
    Buckets[] buckets = new Buckets[inside.length()];
    BitSet bySamples = new BitSet();
    for (int number = inside.nextSetBit(0); number >= 0; number = inside.nextSetBit(number + 1)) {
      buckets[number] = buckets(number, channel, inside);
      bySamples.set(number, drawing.needsSamples(buckets[number]));
    }
    for (int number = inside.nextSetBit(0); number >= 0; number = inside.nextSetBit(number + 1)) {
      if (bySamples.get(number)) {
        drawing.draw(buckets[number], column(number, channel, bySamples));
      } else {
        drawing.draw(buckets[number]);
      }
    }
  }

  /** The segments of which something could not be read so far: their numbers, set. */
  public BitSet damaged() {
    BitSet damaged = (BitSet) overviews.damaged().clone();
    damaged.or(segments.damaged());
    damaged.or(lost);
    return damaged;
  }

  private BitSet inside(PixelWindow window) {
    BitSet inside = new BitSet();
    for (int number = 0; number < source.count(); number++) {
      inside.set(
          number,
          source.firstMicros(number) < window.toMicros()
              && source.lastMicros(number) >= window.fromMicros());
    }
    return inside;
  }

  private Optional<Beside> before(int channel, long timeMicros) {
    for (int number = source.count() - 1; number >= 0; number--) {
      if (source.firstMicros(number) < timeMicros) {
        Buckets buckets = buckets(number, channel, NO_OTHERS);
        // The ends of a segment's buckets are exact: no samples have to be unpacked for them.
        Optional<Beside> found =
            source.lastMicros(number) < timeMicros
                ? buckets.last()
                : samples(number, channel, buckets).lastBefore(timeMicros);
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
        Buckets buckets = buckets(number, channel, NO_OTHERS);
        Optional<Beside> found =
            source.firstMicros(number) >= timeMicros
                ? buckets.first()
                : samples(number, channel, buckets).firstFrom(timeMicros);
        if (found.isPresent()) {
          return found;
        }
      }
    }
    return Optional.empty();
  }

  /** The overview is smaller, and kept: where it has no bucket there is nothing to unpack. */
  private Column samples(int number, int channel, Buckets buckets) {
    return buckets.size() == 0 ? Column.EMPTY : column(number, channel, NO_OTHERS);
  }

  /** The buckets of a channel; where the overview is damaged, from the samples. */
  private Buckets buckets(int number, int channel, BitSet wanted) {
    Overview overview = overviews.find(number, wanted);
    return overview == null
        ? BucketMaker.of(column(number, channel, NO_OTHERS))
        : overview.buckets(channel);
  }

  /** The samples of a channel; none where it does not occur or cannot be read. */
  private Column column(int number, int channel, BitSet wanted) {
    SegmentColumns segment = segments.find(number, wanted);
    if (segment == null) {
      return Column.EMPTY;
    }
    return column(segment, number, channel);
  }

  private Column column(SegmentColumns segment, int number, int channel) {
    lost.set(number, lost.get(number) || segment.hasLost(channel));
    return segment.column(channel);
  }
}
