package steadypull.advice;

import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.Set;
import steadypull.channel.Channel;
import steadypull.channel.Channels;

/**
 * What rules may know of the last minutes of a drive: how temperatures moved, how hard it pulled,
 * how long it has stood. A reducer over the seconds of the trip. One thread.
 */
final class DriveHistory {
  /** More than this counts as a hard pull (common practice, no source). */
  private static final double HARD_LOAD_PERCENT = 70;

  private static final double STANDING_KM_H = 3;
  private static final double RUNNING_RPM = 300;
  private static final double MICROS_PER_SECOND = 1e6;

  private final Map<Channel, RecentValues> values = new HashMap<>();
  private final Map<Channel, Long> overMicros = new HashMap<>();
  private final Set<Channel> warned = new HashSet<>();
  private final RecentSeconds hard = new RecentSeconds();
  private OptionalLong runningSince = OptionalLong.empty();
  private OptionalLong standingSince = OptionalLong.empty();
  private long nowMicros;

  /** Takes the next second. */
  void step(SituationFacts facts) {
    nowMicros = facts.timeMicros();
    for (ChannelFacts each : facts.channels().values()) {
      facts.fresh(each.channel()).ifPresent(value -> values(each.channel()).add(nowMicros, value));
      if (each.isOverLimit() || each.isDerating()) {
        overMicros.put(each.channel(), nowMicros);
      }
    }
    boolean isPulling =
        facts.fresh(Channels.ENGINE_LOAD).orElse(0) >= HARD_LOAD_PERCENT
            && facts.speed().orElse(0) >= STANDING_KM_H;
    hard.add(nowMicros, isPulling);
    runningSince = since(runningSince, facts.fresh(Channels.ENGINE_SPEED).orElse(0) >= RUNNING_RPM);
    standingSince = since(standingSince, facts.speed().orElse(STANDING_KM_H) < STANDING_KM_H);
  }

  private RecentValues values(Channel channel) {
    return values.computeIfAbsent(channel, _ -> new RecentValues());
  }

  private OptionalLong since(OptionalLong before, boolean isSo) {
    return !isSo ? OptionalLong.empty() : before.isPresent() ? before : OptionalLong.of(nowMicros);
  }

  /** Notes the channels of which a caution or warning speaks. */
  void warned(Set<Channel> channels) {
    warned.clear();
    warned.addAll(channels);
  }

  /** Whether a caution or warning spoke of the channel in the last second. */
  boolean isWarned(Channel channel) {
    return warned.contains(channel);
  }

  /** By how much the channel is hotter than a minute ago, K; empty if that was not heard. */
  OptionalDouble risesIn60Seconds(Channel channel) {
    return values(channel).risesInAMinute(nowMicros);
  }

  /** By how much it is cooler than at its hottest in the last 30 s, K; 0 or more. */
  OptionalDouble fallsIn30Seconds(Channel channel) {
    return values(channel).fallsInHalfAMinute(nowMicros);
  }

  /** Seconds since the channel was over its limit or cost power; endless if never on this drive. */
  double secondsSinceOver(Channel channel) {
    Long at = overMicros.get(channel);
    return at == null ? Double.POSITIVE_INFINITY : (nowMicros - at) / MICROS_PER_SECOND;
  }

  /** Seconds of hard pull within the last 300 s. */
  double hardPullSeconds() {
    return hard.count();
  }

  /** Seconds for which the engine has run; 0 if it stands. */
  double secondsRunning() {
    return seconds(runningSince);
  }

  /** Seconds for which the vehicle has stood; 0 if it moves. */
  double secondsStanding() {
    return seconds(standingSince);
  }

  private double seconds(OptionalLong since) {
    return since.isEmpty() ? 0 : (nowMicros - since.getAsLong()) / MICROS_PER_SECOND;
  }
}
