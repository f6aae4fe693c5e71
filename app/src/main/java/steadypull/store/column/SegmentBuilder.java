package steadypull.store.column;

import java.util.Arrays;

/**
 * Gathers samples of a trip and packs them. One thread; to be used again after {@link #clear}.
 *
 * <p>What comes out is the same for the same samples on the same version of Java; another may
 * deflate to other bytes, which any version reads.
 */
public final class SegmentBuilder {
  private static final int FIRST_CAPACITY = 1024;

  /** A minute or two of driving: damaged times cost no more of all channels. */
  private static final int STRETCH_SAMPLES = 4096;

  private int[] channels = new int[FIRST_CAPACITY];
  private long[] times = new long[FIRST_CAPACITY];
  private double[] values = new double[FIRST_CAPACITY];
  private int size;
  private long firstMicros;
  private long lastMicros;

  /**
   * Takes a sample.
   *
   * @param channel index in the trip's list of channels, 0 to 65535
   * @param timeMicros microseconds since the start of the trip; need not increase
   * @param value finite
   * @throws IllegalStateException if there are 131 072 samples already
   */
  public void add(int channel, long timeMicros, double value) {
    require(channel, value);
    if (size == channels.length) {
      int capacity = 2 * size;
      channels = Arrays.copyOf(channels, capacity);
      times = Arrays.copyOf(times, capacity);
      values = Arrays.copyOf(values, capacity);
    }
    channels[size] = channel;
    times[size] = timeMicros;
    values[size] = value;
    firstMicros = size == 0 ? timeMicros : Math.min(firstMicros, timeMicros);
    lastMicros = size == 0 ? timeMicros : Math.max(lastMicros, timeMicros);
    size++;
  }

  private void require(int channel, double value) {
    if (channel < 0 || channel >= SegmentFormat.MOST_CHANNELS) {
      throw new IllegalArgumentException("A channel is 0 to 65535, found " + channel);
    }
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException("A value is finite, found " + value);
    }
    if (size == SegmentFormat.MOST_SAMPLES) {
      throw new IllegalStateException("A segment holds " + size + " samples, and is full");
    }
  }

  /** How many samples there are. */
  public int size() {
    return size;
  }

  /** The least time, microseconds; 0 if there are no samples. */
  public long firstMicros() {
    return firstMicros;
  }

  /** The greatest time, microseconds; 0 if there are no samples. */
  public long lastMicros() {
    return lastMicros;
  }

  /** Tells the samples in the order in which they were added. */
  public void forEach(SampleSink sink) {
    for (int i = 0; i < size; i++) {
      sink.sample(channels[i], times[i], values[i]);
    }
  }

  /**
   * The samples in few bytes, for {@link Segment#decode}.
   *
   * @throws IllegalStateException if there are none
   */
  public byte[] encode() {
    requireSamples();
    int[] present = ChannelList.of(channels, size);
    int[] places = places(present);
    try (SegmentParts parts = new SegmentParts()) {
      for (int from = 0; from < size; ) {
        int to = endOfStretch(from);
        int[] counts = new int[present.length];
        for (int i = from; i < to; i++) {
          counts[places[i]]++;
        }
        parts.add(Timeline.of(times, places, from, to), counts);
        from = to;
      }
      for (Column column : columns(places, present.length)) {
        parts.add(column);
      }
      return parts.finish(present);
    }
  }

  /** What came together stays together. */
  private int endOfStretch(int from) {
    int to = Math.min(size, from + STRETCH_SAMPLES);
    while (to < size && times[to] == times[to - 1]) {
      to++;
    }
    return to;
  }

  /**
   * What drawing needs of the samples, for {@link Overview#decode}.
   *
   * @throws IllegalStateException if there are none
   */
  public byte[] encodeOverview() {
    requireSamples();
    int[] present = ChannelList.of(channels, size);
    return Overview.encode(present, columns(places(present), present.length));
  }

  /** Forgets the samples and keeps the room. */
  public void clear() {
    size = 0;
    firstMicros = 0;
    lastMicros = 0;
  }

  private void requireSamples() {
    if (size == 0) {
      throw new IllegalStateException("A segment holds samples, found none");
    }
  }

  /** Each sample's place in the list of channels. */
  private int[] places(int[] present) {
    int[] placeOf = new int[present[present.length - 1] + 1];
    for (int place = 0; place < present.length; place++) {
      placeOf[present[place]] = place;
    }
    int[] places = new int[size];
    for (int i = 0; i < size; i++) {
      places[i] = placeOf[channels[i]];
    }
    return places;
  }

  private Column[] columns(int[] places, int count) {
    int[] filled = new int[count];
    for (int place : places) {
      filled[place]++;
    }
    long[][] columnTimes = new long[count][];
    double[][] columnValues = new double[count][];
    for (int place = 0; place < count; place++) {
      columnTimes[place] = new long[filled[place]];
      columnValues[place] = new double[filled[place]];
    }
    Arrays.fill(filled, 0);
    for (int i = 0; i < size; i++) {
      int next = filled[places[i]]++;
      columnTimes[places[i]][next] = times[i];
      columnValues[places[i]][next] = values[i];
    }
    Column[] columns = new Column[count];
    Arrays.setAll(columns, place -> new Column(columnTimes[place], columnValues[place]));
    return columns;
  }
}
