package steadypull.drive;

import java.util.ArrayDeque;
import java.util.HashMap;
import java.util.Map;
import steadypull.channel.Channel;
import steadypull.channel.Sample;

/** The last three minutes of every channel that a strip shows. Pipeline thread only. */
final class TraceHistory {
  /** A little more than the 180 s shown, so that a line enters from outside the picture. */
  private static final long KEPT_MICROS = 185_000_000;

  private final Map<Channel, ArrayDeque<Sample>> kept = new HashMap<>();

  void add(Sample sample) {
    ArrayDeque<Sample> samples =
        kept.computeIfAbsent(sample.channel(), channel -> new ArrayDeque<>());
    samples.addLast(sample);
    while (samples.getFirst().timeMicros() < sample.timeMicros() - KEPT_MICROS) {
      samples.removeFirst();
    }
  }

  /** The kept samples of a channel, oldest first; empty if it was never heard. */
  Trace of(Channel channel) {
    ArrayDeque<Sample> samples = kept.getOrDefault(channel, new ArrayDeque<>());
    return new Trace(
        samples.stream().mapToLong(Sample::timeMicros).toArray(),
        samples.stream().mapToDouble(Sample::value).toArray());
  }
}
