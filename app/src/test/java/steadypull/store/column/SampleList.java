package steadypull.store.column;

import java.util.ArrayList;
import java.util.List;

/** Samples in their order; equal if every bit is. */
final class SampleList implements SampleSink {
  private record Entry(int channel, long timeMicros, long valueBits) {}

  private final List<Entry> entries = new ArrayList<>();

  static SampleList of(Segment segment) {
    SampleList samples = new SampleList();
    segment.forEach(samples);
    return samples;
  }

  @Override
  public void sample(int channel, long timeMicros, double value) {
    entries.add(new Entry(channel, timeMicros, Double.doubleToRawLongBits(value)));
  }

  int size() {
    return entries.size();
  }

  SampleList ofChannel(int channel) {
    SampleList samples = new SampleList();
    entries.stream().filter(entry -> entry.channel == channel).forEach(samples.entries::add);
    return samples;
  }

  void forEach(SampleSink sink) {
    for (Entry entry : entries) {
      sink.sample(entry.channel, entry.timeMicros, Double.longBitsToDouble(entry.valueBits));
    }
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof SampleList list && entries.equals(list.entries);
  }

  @Override
  public int hashCode() {
    return entries.hashCode();
  }

  @Override
  public String toString() {
    return entries.size() + " samples, " + entries.stream().limit(20).toList();
  }
}
