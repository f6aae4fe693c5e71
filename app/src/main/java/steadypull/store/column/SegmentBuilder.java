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
   * @throws IllegalStateException if there are 262 144 samples already
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
    ByteWriter out = SegmentFormat.begin(SegmentFormat.SEGMENT);
    int[] present = ChannelList.of(channels, size);
    ChannelList.write(out, present);
    try (Deflation deflation = new Deflation()) {
      int[] columns = columns(present);
      Timeline.of(times, columns, size).write(out, deflation);
      double[][] split = split(columns, present.length);
      for (double[] column : split) {
        ValueSeries.write(out, column, column.length, deflation);
      }
    }
    return SegmentFormat.finish(out);
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
  private int[] columns(int[] present) {
    int[] places = new int[present[present.length - 1] + 1];
    for (int place = 0; place < present.length; place++) {
      places[present[place]] = place;
    }
    int[] columns = new int[size];
    for (int i = 0; i < size; i++) {
      columns[i] = places[channels[i]];
    }
    return columns;
  }

  private double[][] split(int[] columns, int count) {
    int[] filled = new int[count];
    for (int column : columns) {
      filled[column]++;
    }
    double[][] split = new double[count][];
    for (int column = 0; column < count; column++) {
      split[column] = new double[filled[column]];
    }
    Arrays.fill(filled, 0);
    for (int i = 0; i < size; i++) {
      split[columns[i]][filled[columns[i]]++] = values[i];
    }
    return split;
  }
}
