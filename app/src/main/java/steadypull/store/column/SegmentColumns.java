package steadypull.store.column;

import java.util.Arrays;
import java.util.HashSet;
import java.util.Set;

/** What drawing needs of a segment's samples: each channel's own by ascending time. Immutable. */
final class SegmentColumns {
  private final int[] channels;
  private final Column[] columns;
  private final Set<Integer> damagedChannels;
  private final SegmentState state;

  private SegmentColumns(
      int[] channels, Column[] columns, Set<Integer> damagedChannels, SegmentState state) {
    this.channels = channels;
    this.columns = columns;
    this.damagedChannels = damagedChannels;
    this.state = state;
  }

  static SegmentColumns of(Segment segment) {
    int[] channels = segment.channels();
    Column[] columns = new Column[channels.length];
    for (int place = 0; place < columns.length; place++) {
      columns[place] = readable(segment, channels[place]);
    }
    SegmentState state = segment.state();
    Set<Integer> damagedChannels = new HashSet<>();
    for (LostSamples lost : state.lost()) {
      damagedChannels.add(lost.channel());
    }
    return new SegmentColumns(channels, columns, damagedChannels, state);
  }

  private static Column readable(Segment segment, int channel) {
    try {
      return segment.column(channel).byTime();
    } catch (DamagedSegmentException e) {
      // Told by hasLost().
      return Column.EMPTY;
    }
  }

  /** The samples of one channel that can be read; none if it does not occur. */
  Column column(int channel) {
    int place = Arrays.binarySearch(channels, channel);
    return place < 0 ? Column.EMPTY : columns[place];
  }

  /** Whether samples of a channel are missing because they are damaged. */
  boolean hasLost(int channel) {
    return damagedChannels.contains(channel);
  }

  /** What could be read of the segment. */
  SegmentState state() {
    return state;
  }

  /** About the room they take in memory. */
  int octets() {
    int samples = 0;
    for (Column column : columns) {
      samples += column.size();
    }
    return (Long.BYTES + Double.BYTES) * samples;
  }
}
