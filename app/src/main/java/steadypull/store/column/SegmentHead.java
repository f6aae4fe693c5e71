package steadypull.store.column;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * What a segment says of itself, with a check of its own: damage behind it costs the part in which
 * it lies.
 *
 * <pre>
 * channels  unsigned   how many, then each: unsigned, how far after the one before, the first after -1
 * columns              of each channel: how many octets its part has, the check not counted; unsigned
 * stretches unsigned   how many, then of each
 *   length  unsigned   how many octets its part has, the check not counted
 *   start   signed     the least time, microseconds since the start of the trip
 *   span    unsigned   from there to the greatest
 *   counts             of each channel: how many samples; unsigned
 * </pre>
 */
final class SegmentHead {
  static final int MOST_OCTETS = 1 << 26;

  private final int[] channels;
  private final int[] columnOctets;
  private final List<Stretch> stretches;
  private final int end;

  /**
   * A head.
   *
   * @param channels ascending
   * @param columnOctets how long each channel's part is
   * @param stretches in the order of acceptance
   * @param end where the parts begin
   */
  SegmentHead(int[] channels, int[] columnOctets, List<Stretch> stretches, int end) {
    this.channels = channels;
    this.columnOctets = columnOctets;
    this.stretches = List.copyOf(stretches);
    this.end = end;
  }

  /** Ascending; not to be changed. */
  int[] channels() {
    return channels;
  }

  List<Stretch> stretches() {
    return stretches;
  }

  void write(ByteWriter out) {
    ByteWriter head = new ByteWriter();
    ChannelList.write(head, channels);
    for (int octets : columnOctets) {
      head.unsigned(octets);
    }
    head.unsigned(stretches.size());
    stretches.forEach(stretch -> stretch.write(head));
    out.unsigned(head.size());
    out.append(head);
    SegmentFormat.writeCheck(out, 0);
  }

  static SegmentHead read(byte[] bytes) throws DamagedSegmentException {
    int begin = SegmentFormat.beginning(SegmentFormat.SEGMENT, bytes);
    ByteReader in = new ByteReader(bytes, begin, bytes.length);
    int length = in.count(in.remaining(), "bytes of a head");
    int from = in.skip(length);
    SegmentFormat.requireCheck(bytes, 0, from + length);
    return read(
        new ByteReader(bytes, from, from + length), from + length + SegmentFormat.CHECK_OCTETS);
  }

  private static SegmentHead read(ByteReader in, int end) throws DamagedSegmentException {
    int[] channels = ChannelList.read(in);
    int[] columnOctets = new int[channels.length];
    for (int place = 0; place < channels.length; place++) {
      columnOctets[place] = in.count(MOST_OCTETS, "bytes of a column");
    }
    int count = in.count(in.remaining(), "stretches");
    List<Stretch> stretches = new ArrayList<>();
    int most = SegmentFormat.MOST_SAMPLES;
    for (int i = 0; i < count; i++) {
      Stretch stretch = Stretch.read(in, channels.length, most);
      most -= stretch.samples();
      stretches.add(stretch);
    }
    in.requireEnd();
    SegmentHead head = new SegmentHead(channels, columnOctets, stretches, end);
    head.requireSamples();
    return head;
  }

  private void requireSamples() throws DamagedSegmentException {
    for (int place = 0; place < channels.length; place++) {
      if (samples(place) == 0) {
        throw new DamagedSegmentException("samples of every channel", "none");
      }
    }
    if (samples() == 0) {
      throw new DamagedSegmentException("samples", "none");
    }
  }

  /** Where the parts begin. */
  int end() {
    return end;
  }

  /** How long each part is in the order in which they lie, the check not counted. */
  int[] partOctets() {
    return IntStream.concat(
            stretches.stream().mapToInt(Stretch::octets), Arrays.stream(columnOctets))
        .toArray();
  }

  /** Of all channels. */
  int samples() {
    return stretches.stream().mapToInt(Stretch::samples).sum();
  }

  /** Of the channel in that place. */
  int samples(int place) {
    return stretches.stream().mapToInt(stretch -> stretch.samples(place)).sum();
  }

  /** The octets of a stretch, if they are there and their check holds. */
  ByteReader stretch(byte[] bytes, int number) throws DamagedSegmentException {
    return part(bytes, begin(number), stretches.get(number).octets());
  }

  /** The octets of a channel's values, if they are there and their check holds. */
  ByteReader column(byte[] bytes, int place) throws DamagedSegmentException {
    return part(bytes, begin(stretches.size() + place), columnOctets[place]);
  }

  /** Refuses bytes behind the last part. */
  void requireEnd(byte[] bytes) throws DamagedSegmentException {
    long parts = begin(stretches.size() + columnOctets.length);
    if (bytes.length != parts) {
      throw new DamagedSegmentException("the end at " + parts, bytes.length + " bytes");
    }
  }

  private long begin(int part) {
    return end + Arrays.stream(partOctets()).limit(part).mapToLong(SegmentHead::withCheck).sum();
  }

  private static long withCheck(int octets) {
    return (long) octets + SegmentFormat.CHECK_OCTETS;
  }

  private static ByteReader part(byte[] bytes, long begin, int octets)
      throws DamagedSegmentException {
    if (begin + withCheck(octets) > bytes.length) {
      throw new DamagedSegmentException(octets + " bytes and their check", "fewer");
    }
    int from = (int) begin;
    SegmentFormat.requireCheck(bytes, from, from + octets);
    return new ByteReader(bytes, from, from + octets);
  }
}
