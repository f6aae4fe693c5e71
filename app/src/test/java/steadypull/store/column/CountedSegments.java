package steadypull.store.column;

import java.util.Arrays;
import java.util.HashSet;
import java.util.Set;

/** Counts what is read of a trip, and damages it. */
final class CountedSegments implements SegmentSource {
  private final SegmentSource whole;
  private final Set<Integer> damagedSegments = new HashSet<>();
  private final Set<Integer> damagedOverviews = new HashSet<>();
  private int segmentsRead;
  private int overviewsRead;

  CountedSegments(SegmentSource whole) {
    this.whole = whole;
  }

  void damageSegment(int number) {
    damagedSegments.add(number);
  }

  void damageOverview(int number) {
    damagedOverviews.add(number);
  }

  int segmentsRead() {
    return segmentsRead;
  }

  int overviewsRead() {
    return overviewsRead;
  }

  @Override
  public int count() {
    return whole.count();
  }

  @Override
  public long firstMicros(int number) {
    return whole.firstMicros(number);
  }

  @Override
  public long lastMicros(int number) {
    return whole.lastMicros(number);
  }

  @Override
  public byte[] segment(int number) {
    segmentsRead++;
    return damagedSegments.contains(number) ? halved(whole.segment(number)) : whole.segment(number);
  }

  @Override
  public byte[] overview(int number) {
    overviewsRead++;
    return damagedOverviews.contains(number)
        ? halved(whole.overview(number))
        : whole.overview(number);
  }

  private static byte[] halved(byte[] bytes) {
    return Arrays.copyOf(bytes, bytes.length / 2);
  }
}
