package steadypull.store.column;

import java.util.Arrays;

/**
 * What drawing needs of a segment: the buckets of each channel. Immutable.
 *
 * <pre>
 * channels  as in a segment's head, see {@link SegmentHead}
 * pool      block      see {@link SeriesWriter}
 * buckets              of each channel, see {@link BucketSeries}
 * </pre>
 */
public final class Overview {
  private final int[] channels;
  private final Buckets[] buckets;

  private Overview(int[] channels, Buckets[] buckets) {
    this.channels = channels;
    this.buckets = buckets;
  }

  /**
   * Unpacks what {@link SegmentBuilder#encodeOverview} packed.
   *
   * @throws DamagedSegmentException if the bytes are no whole overview of a known form
   */
  public static Overview decode(byte[] bytes) throws DamagedSegmentException {
    ByteReader in = SegmentFormat.open(SegmentFormat.OVERVIEW, bytes);
    int[] channels = ChannelList.read(in);
    Buckets[] buckets = new Buckets[channels.length];
    try (SeriesReader series = new SeriesReader()) {
      series.begin(in);
      int most = SegmentFormat.MOST_SAMPLES;
      for (int i = 0; i < buckets.length; i++) {
        buckets[i] = BucketSeries.read(series, most);
        most -= buckets[i].size();
      }
      series.requireEnd();
    }
    return new Overview(channels, buckets);
  }

  static byte[] encode(int[] channels, Column[] columns) {
    ByteWriter out = SegmentFormat.begin(SegmentFormat.OVERVIEW);
    ChannelList.write(out, channels);
    try (SeriesWriter series = new SeriesWriter()) {
      for (Column column : columns) {
        BucketSeries.write(series, BucketMaker.of(column.byTime()));
      }
      series.finish(out);
    }
    return SegmentFormat.finish(out);
  }

  /** The channels that occur, ascending. */
  public int[] channels() {
    return channels.clone();
  }

  /** The buckets of a channel; none if it does not occur. */
  Buckets buckets(int channel) {
    int place = Arrays.binarySearch(channels, channel);
    return place < 0 ? new Buckets(0, 0) : buckets[place];
  }

  /** About the room it takes in memory. */
  int octets() {
    int octets = 0;
    for (Buckets each : buckets) {
      octets += each.octets();
    }
    return octets;
  }
}
