package steadypull.store.column;

import java.util.ArrayList;
import java.util.List;

/** The segments of a trip in memory. */
final class SegmentList implements SegmentSource {
  private final List<Long> firstMicros = new ArrayList<>();
  private final List<Long> lastMicros = new ArrayList<>();
  private final List<byte[]> segments = new ArrayList<>();
  private final List<byte[]> overviews = new ArrayList<>();
  private final SegmentBuilder builder = new SegmentBuilder();
  private final int samplesOfSegment;

  SegmentList(int samplesOfSegment) {
    this.samplesOfSegment = samplesOfSegment;
  }

  void add(int channel, long timeMicros, double value) {
    builder.add(channel, timeMicros, value);
    if (builder.size() == samplesOfSegment) {
      finish();
    }
  }

  /** Packs what has been added and is not packed yet. */
  SegmentList finish() {
    if (builder.size() > 0) {
      firstMicros.add(builder.firstMicros());
      lastMicros.add(builder.lastMicros());
      segments.add(builder.encode());
      overviews.add(builder.encodeOverview());
      builder.clear();
    }
    return this;
  }

  @Override
  public int count() {
    return segments.size();
  }

  @Override
  public long firstMicros(int number) {
    return firstMicros.get(number);
  }

  @Override
  public long lastMicros(int number) {
    return lastMicros.get(number);
  }

  @Override
  public byte[] segment(int number) {
    return segments.get(number);
  }

  @Override
  public byte[] overview(int number) {
    return overviews.get(number);
  }
}
