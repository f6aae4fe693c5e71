package steadypull.store.column;

import java.util.Arrays;

/** The channels of a segment, ascending, as they lie in its bytes. */
final class ChannelList {
  private ChannelList() {}

  static void write(ByteWriter out, int[] channels) {
    out.unsigned(channels.length);
    int before = -1;
    for (int channel : channels) {
      out.unsigned(channel - before);
      before = channel;
    }
  }

  static int[] read(ByteReader in) throws DamagedSegmentException {
    // Every channel takes an octet at least.
    int count = in.count(Math.min(SegmentFormat.MOST_CHANNELS, in.remaining()), "channels");
    int[] channels = new int[count];
    int before = -1;
    for (int i = 0; i < count; i++) {
      int step = in.count(SegmentFormat.MOST_CHANNELS - 1 - before, "channels further");
      if (step == 0) {
        throw new DamagedSegmentException("channels in their order", before + " twice");
      }
      before += step;
      channels[i] = before;
    }
    return channels;
  }

  /** The distinct channels of samples. */
  static int[] of(int[] channels, int count) {
    return Arrays.stream(channels, 0, count).sorted().distinct().toArray();
  }
}
