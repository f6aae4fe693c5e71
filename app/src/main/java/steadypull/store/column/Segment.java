package steadypull.store.column;

import java.util.Arrays;

/** Samples of a trip, unpacked. Immutable. */
public final class Segment {
  private final int[] channels;
  private final Timeline timeline;
  private final Column[] columns;
  private final int size;
  private final long firstMicros;
  private final long lastMicros;

  private Segment(int[] channels, Timeline timeline, Column[] columns) {
    this.channels = channels;
    this.timeline = timeline;
    this.columns = columns;
    this.size = Arrays.stream(columns).mapToInt(Column::size).sum();
    this.firstMicros = timeline.firstMicros();
    this.lastMicros = timeline.lastMicros();
  }

  /**
   * Unpacks what {@link SegmentBuilder#encode} packed. A segment that has been unpacked is whole:
   * nothing of it can fail later.
   *
   * @throws DamagedSegmentException if the bytes are no whole segment of a known form
   */
  public static Segment decode(byte[] bytes) throws DamagedSegmentException {
    ByteReader in = SegmentFormat.open(SegmentFormat.SEGMENT, bytes);
    int[] channels = ChannelList.read(in);
    try (SeriesReader series = new SeriesReader(in)) {
      Timeline timeline = Timeline.read(series, channels.length);
      int[] counts = timeline.counts(channels.length);
      long[][] times = timeline.columnTimes(counts);
      Column[] columns = new Column[channels.length];
      for (int column = 0; column < columns.length; column++) {
        columns[column] = new Column(times[column], ValueSeries.read(series, counts[column]));
      }
      series.requireEnd();
      return new Segment(channels, timeline, columns);
    }
  }

  /** How many samples there are, at least one. */
  public int size() {
    return size;
  }

  /** The least time, microseconds since the start of the trip. */
  public long firstMicros() {
    return firstMicros;
  }

  /** The greatest time, microseconds since the start of the trip. */
  public long lastMicros() {
    return lastMicros;
  }

  /** The channels that occur, ascending. */
  public int[] channels() {
    return channels.clone();
  }

  /** Tells the samples in the order in which they were added. */
  public void forEach(SampleSink sink) {
    int[] told = new int[channels.length];
    for (int arrival = 0; arrival < timeline.arrivals(); arrival++) {
      long timeMicros = timeline.timeMicros(arrival);
      for (int column : timeline.shape(arrival)) {
        sink.sample(channels[column], timeMicros, columns[column].value(told[column]++));
      }
    }
  }

  /** The samples of one channel; empty if it does not occur. */
  public Column column(int channel) {
    int place = Arrays.binarySearch(channels, channel);
    return place < 0 ? Column.EMPTY : columns[place];
  }

  /** About the room it takes in memory. */
  int octets() {
    return (Long.BYTES + Double.BYTES) * size + (Long.BYTES + Integer.BYTES) * timeline.arrivals();
  }
}
