package steadypull.store.column;

import java.util.List;

/**
 * What could be read of a segment. Immutable.
 *
 * @param samples how many it holds, lost ones too
 * @param lastMicros its greatest time, microseconds since the start of the trip
 * @param lost what is damaged; empty if it is whole
 */
public record SegmentState(int samples, long lastMicros, List<LostSamples> lost) {
  public SegmentState {
    lost = List.copyOf(lost);
  }
}
