package steadypull.store.column;

import java.util.Arrays;

/** What the head of a segment says of one of its stretches. Immutable. */
final class Stretch {
  private final int[] counts;
  private final long firstMicros;
  private final long lastMicros;
  private final int octets;

  /**
   * A stretch.
   *
   * @param counts how many samples each channel has in it; not to be changed
   * @param firstMicros the least time, microseconds since the start of the trip
   * @param lastMicros the greatest
   * @param octets how long the part is, the check not counted
   */
  Stretch(int[] counts, long firstMicros, long lastMicros, int octets) {
    this.counts = counts;
    this.firstMicros = firstMicros;
    this.lastMicros = lastMicros;
    this.octets = octets;
  }

  static Stretch of(Timeline timeline, int[] counts, int octets) {
    return new Stretch(counts, timeline.firstMicros(), timeline.lastMicros(), octets);
  }

  static Stretch read(ByteReader in, int channels, int most) throws DamagedSegmentException {
    int octets = in.count(SegmentHead.MOST_OCTETS, "bytes of a stretch");
    long firstMicros = in.signed();
    long lastMicros = firstMicros + in.unsigned();
    int[] counts = new int[channels];
    int left = most;
    for (int place = 0; place < channels; place++) {
      counts[place] = in.count(left, "samples");
      left -= counts[place];
    }
    return new Stretch(counts, firstMicros, lastMicros, octets);
  }

  void write(ByteWriter out) {
    out.unsigned(octets);
    out.signed(firstMicros);
    out.unsigned(lastMicros - firstMicros);
    for (int count : counts) {
      out.unsigned(count);
    }
  }

  long firstMicros() {
    return firstMicros;
  }

  long lastMicros() {
    return lastMicros;
  }

  int octets() {
    return octets;
  }

  /** How many samples the channel in that place has. */
  int samples(int place) {
    return counts[place];
  }

  /** How many samples all channels have. */
  int samples() {
    return Arrays.stream(counts).sum();
  }

  /** Whether a timeline is the one that was told of. */
  void require(Timeline timeline) throws DamagedSegmentException {
    if (!Arrays.equals(timeline.counts(counts.length), counts)
        || timeline.firstMicros() != firstMicros
        || timeline.lastMicros() != lastMicros) {
      throw new DamagedSegmentException(
          samples() + " samples from " + firstMicros + " to " + lastMicros + " us", "others");
    }
  }
}
