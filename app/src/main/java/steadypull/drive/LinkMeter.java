package steadypull.drive;

import java.util.ArrayDeque;
import java.util.List;
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

  /** Vehicle speed comes in whole km/h. */
  private static final double STANDING_KILOMETRES_PER_HOUR = 1;

  /** Half a second less than the rules wait before they miss the link. */
  private static final double SWITCHED_OFF_SECONDS = 4.5;

  private final ArrayDeque<Long> arrivals = new ArrayDeque<>();
  private LinkEvent link = new LinkEvent(0, LinkSummary.State.OPENING, "", 0);
  private long lastHeardMicros;

  /** A satellite receiver that goes on speaking says nothing of the link to the vehicle. */
  void heard(Sample sample) {
    if (!isHeard(sample)) {
      return;
    }
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
    List<Sample> heard = latest.values().stream().filter(LinkMeter::isHeard).toList();
    int fresh = (int) heard.stream().filter(sample -> isFresh(sample, nowMicros)).count();
    return new LinkSummary(
        link.state(),
        arrivals.size() * 1e6 / WINDOW_MICROS,
        fresh,
        Math.max(link.expectedChannels(), heard.size()),
        link.detail());
  }

  /** Whether a sample came over the link: neither computed from others nor from a receiver. */
  private static boolean isHeard(Sample sample) {
    return !Channels.derived().contains(sample.channel())
        && !Channels.located().contains(sample.channel());
  }

  /**
   * Whether the engine is to be taken as switched off: the link says so; or the adapter is well,
   * the vehicle has fallen silent, and the last that was heard is that it stood. A link that breaks
   * on the road, or an adapter that goes away, is another matter.
   */
  boolean isSwitchedOff(long nowMicros, Map<Channel, Sample> latest) {
    boolean isAdapterWell =
        switch (link.state()) {
          case CONNECTED, SEARCHING, VEHICLE_SILENT, BUS_FAULT, ENGINE_OFF -> true;
          case OPENING, BUS_BUSY, ADAPTER_FAULT, LOST, CLOSED -> false;
        };
    Sample speed = latest.get(Channels.VEHICLE_SPEED);
    boolean stood =
        link.state() == LinkSummary.State.ENGINE_OFF
            || (speed != null && speed.value() < STANDING_KILOMETRES_PER_HOUR);
    return isAdapterWell && stood && secondsSilent(nowMicros) >= SWITCHED_OFF_SECONDS;
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
