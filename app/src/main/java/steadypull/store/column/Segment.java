package steadypull.store.column;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Samples of a trip, unpacked. Of damaged bytes the samples are missing that lay there: those of
 * one channel, or those of a stretch. Immutable.
 */
public final class Segment {
  private final SegmentHead head;
  private final @Nullable Timeline[] timelines;
  private final @Nullable Column[] columns;

  /** Made of what a {@link SegmentReading} could read; what is damaged is null. */
  Segment(SegmentHead head, @Nullable Timeline[] timelines, List<Optional<double[]>> values) {
    this.head = head;
    this.timelines = timelines;
    this.columns = new Column[values.size()];
    long[][] times = times();
    for (int place = 0; place < columns.length; place++) {
      if (values.get(place).isPresent()) {
        columns[place] = new Column(times[place], readable(place, values.get(place).get()));
      }
    }
  }

  /**
   * Unpacks what {@link SegmentBuilder#encode} packed, whole: nothing of it can fail later.
   *
   * @throws DamagedSegmentException if the bytes are no whole segment of a known form
   */
  public static Segment decode(byte[] bytes) throws DamagedSegmentException {
    try (SegmentReading reading = new SegmentReading(bytes)) {
      return reading.whole();
    }
  }

  /**
   * Unpacks what can be read of a segment.
   *
   * @throws DamagedSegmentException if not even its head can be read
   */
  public static Segment decodeReadable(byte[] bytes) throws DamagedSegmentException {
    try (SegmentReading reading = new SegmentReading(bytes)) {
      return reading.readable();
    }
  }

  /** The times of each channel's samples, of the stretches that can be read. */
  private long[][] times() {
    int[] counts = new int[columns.length];
    for (int number = 0; number < timelines.length; number++) {
      for (int place = 0; place < counts.length && timelines[number] != null; place++) {
        counts[place] += head.stretches().get(number).samples(place);
      }
    }
    long[][] times = new long[counts.length][];
    Arrays.setAll(times, place -> new long[counts[place]]);
    int[] filled = new int[counts.length];
    for (Timeline timeline : timelines) {
      if (timeline != null) {
        timeline.fillIn(times, filled);
      }
    }
    return times;
  }

  /** The values of a channel, of the stretches that can be read. */
  private double[] readable(int place, double[] all) {
    if (!hasLostStretches()) {
      return all;
    }
    double[] readable = new double[all.length];
    int kept = 0;
    int next = 0;
    for (int number = 0; number < timelines.length; number++) {
      int count = head.stretches().get(number).samples(place);
      if (timelines[number] != null) {
        System.arraycopy(all, next, readable, kept, count);
        kept += count;
      }
      next += count;
    }
    return Arrays.copyOf(readable, kept);
  }

  /** How many samples there are, lost ones too; at least one. */
  public int size() {
    return head.samples();
  }

  /** The least time, microseconds since the start of the trip. */
  public long firstMicros() {
    return head.stretches().stream().mapToLong(Stretch::firstMicros).min().orElseThrow();
  }

  /** The greatest time, microseconds since the start of the trip. */
  public long lastMicros() {
    return head.stretches().stream().mapToLong(Stretch::lastMicros).max().orElseThrow();
  }

  /** The channels that occur, ascending; lost ones too. */
  public int[] channels() {
    return head.channels().clone();
  }

  /** Whether all channels miss some time. */
  boolean hasLostStretches() {
    return Arrays.asList(timelines).contains(null);
  }

  /** What is damaged; nothing if the segment is whole. No sample is told twice. */
  public List<LostSamples> lost() {
    List<LostSamples> lost = new ArrayList<>();
    for (int number = 0; number < timelines.length; number++) {
      Stretch stretch = head.stretches().get(number);
      for (int place = 0; place < columns.length; place++) {
        boolean isLost = timelines[number] == null || columns[place] == null;
        if (isLost && stretch.samples(place) > 0) {
          lost.add(lost(stretch, place));
        }
      }
    }
    return lost;
  }

  /** What could be read of it. */
  public SegmentState state() {
    return new SegmentState(size(), lastMicros(), lost());
  }

  private LostSamples lost(Stretch stretch, int place) {
    return new LostSamples(
        head.channels()[place],
        stretch.samples(place),
        stretch.firstMicros(),
        stretch.lastMicros());
  }

  /** Tells the samples that can be read in the order in which they were added. */
  public void forEach(SampleSink sink) {
    forEach(sink, () -> {});
  }

  /** Tells the samples in the order in which they were added; of a lost one, only that it is. */
  public void forEach(SampleSink sink, Runnable lost) {
    int[] told = new int[columns.length];
    for (int number = 0; number < timelines.length; number++) {
      Timeline timeline = timelines[number];
      if (timeline == null) {
        for (int i = head.stretches().get(number).samples(); i > 0; i--) {
          lost.run();
        }
      } else {
        forEach(timeline, told, sink, lost);
      }
    }
  }

  private void forEach(Timeline timeline, int[] told, SampleSink sink, Runnable lost) {
    for (int arrival = 0; arrival < timeline.arrivals(); arrival++) {
      long timeMicros = timeline.timeMicros(arrival);
      for (int place : timeline.shape(arrival)) {
        Column column = columns[place];
        if (column == null) {
          lost.run();
        } else {
          sink.sample(head.channels()[place], timeMicros, column.value(told[place]++));
        }
      }
    }
  }

  /**
   * The samples of one channel that can be read; empty if it does not occur.
   *
   * @throws DamagedSegmentException if its values are lost
   */
  public Column column(int channel) throws DamagedSegmentException {
    int place = Arrays.binarySearch(head.channels(), channel);
    if (place < 0) {
      return Column.EMPTY;
    }
    Column column = columns[place];
    if (column == null) {
      throw new DamagedSegmentException("the values of a channel", "damaged bytes");
    }
    return column;
  }

  /** About the room it takes in memory. */
  int octets() {
    int arrivals = 0;
    for (Timeline timeline : timelines) {
      arrivals += timeline == null ? 0 : timeline.arrivals();
    }
    return (Long.BYTES + Double.BYTES) * size() + (Long.BYTES + Integer.BYTES) * arrivals;
  }
}
