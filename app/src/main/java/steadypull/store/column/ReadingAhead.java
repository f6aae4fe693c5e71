package steadypull.store.column;

import java.util.BitSet;

/**
 * Which segments are unpacked before anybody asks for them: those in the window, then those beside
 * it, as many as may be kept. One thread.
 */
final class ReadingAhead {
  private final Pieces<SegmentColumns> segments;
  private final int count;
  private final int most;

  /** The segments in the window, and those that were begun for it. */
  private BitSet window = new BitSet();

  private final BitSet begun = new BitSet();

  /** Of so many segments, at most so many are read for one window. */
  ReadingAhead(Pieces<SegmentColumns> segments, int count, int most) {
    this.segments = segments;
    this.count = count;
    this.most = Math.max(1, most);
  }

  /** Begins the next few for a window; false if there are none. */
  boolean step(BitSet inside) {
    if (!inside.equals(window)) {
      window = inside;
      begun.clear();
    }
    for (int reach = 0; !window.isEmpty() && begun.cardinality() < most; reach = 2 * reach + 1) {
      BitSet near = near(reach);
      boolean isAll = near.cardinality() == Math.min(count, most);
      near.andNot(begun);
      BitSet begunNow = segments.readAhead(near, TripLines.SEGMENTS_AT_A_STEP);
      begun.or(begunNow);
      if (isAll || !begunNow.isEmpty()) {
        return !begunNow.isEmpty();
      }
    }
    return false;
  }

  /** The window's segments and so many on either side, as far as they may be kept together. */
  private BitSet near(int reach) {
    int first = window.nextSetBit(0);
    int end = window.length();
    int beside = Math.min(reach, count <= most ? count : Math.max(0, (most - (end - first)) / 2));
    int from = Math.max(0, first - beside);
    BitSet near = new BitSet();
    near.set(from, Math.min(Math.min(count, end + beside), from + most));
    return near;
  }
}
