package steadypull.drive;

import java.util.ArrayDeque;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;

/** Counts samples and fresh channels. Pipeline thread only. */
final class LinkMeter {
  private static final long WINDOW_MICROS = 5_000_000;
  private static final long FRESH_MICROS = 5_000_000;

  /** Channels that are asked for every 10 s or so are fresh for longer. */
  private static final long SLOW_FRESH_MICROS = 30_000_000;

  private static final Set<Channel> SLOW =
      Set.of(
          Channels.AMBIENT_AIR_TEMP,
          Channels.BAROMETRIC_PRESSURE,
          Channels.MODULE_VOLTAGE,
          Channels.REFERENCE_TORQUE,
          Channels.FILTER_REGENERATION);

  private final ArrayDeque<Long> arrivals = new ArrayDeque<>();
  private LinkEvent link = new LinkEvent(0, LinkSummary.State.OPENING, "", 0);
  private long lastHeardMicros;

  void heard(Sample sample) {
    arrivals.addLast(sample.timeMicros());
    lastHeardMicros = sample.timeMicros();
  }

  void changed(LinkEvent event) {
    link = event;
  }

  /** Seconds since any channel was heard, or since the trip began. */
  double secondsSilent(long nowMicros) {
    return Math.max(0, nowMicros - lastHeardMicros) / 1e6;
  }

  LinkSummary summary(long nowMicros, Map<Channel, Sample> latest) {
    while (!arrivals.isEmpty() && arrivals.getFirst() < nowMicros - WINDOW_MICROS) {
      arrivals.removeFirst();
    }
    int fresh = (int) latest.values().stream().filter(sample -> isFresh(sample, nowMicros)).count();
    int heard = latest.size();
    return new LinkSummary(
        link.state(),
        arrivals.size() * 1e6 / WINDOW_MICROS,
        fresh,
        Math.max(link.expectedChannels(), heard),
        link.detail());
  }

  static boolean isFresh(Sample sample, long nowMicros) {
    long allowed = SLOW.contains(sample.channel()) ? SLOW_FRESH_MICROS : FRESH_MICROS;
    return nowMicros - sample.timeMicros() <= allowed;
  }

  /** The sample's value if it is fresh; empty if it is not or there is none. */
  static OptionalDouble fresh(@Nullable Sample sample, long nowMicros) {
    return sample != null && isFresh(sample, nowMicros)
        ? OptionalDouble.of(sample.value())
        : OptionalDouble.empty();
  }
}
