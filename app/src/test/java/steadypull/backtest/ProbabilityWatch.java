package steadypull.backtest;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;
import steadypull.channel.Channel;
import steadypull.review.Warning;
import steadypull.review.WarningDelays;
import steadypull.thermal.LimitForecast;
import steadypull.vehicle.Limit;

/**
 * What would have been said of a drive at other probabilities than those of the shipped rules: one
 * advisory at a time, about the channel that came first.
 *
 * @param soon from here on it is said, of the limit within 180 s, 0 to 1
 * @param inTime likewise, of the limit within 600 s for engine coolant and the oils, 180 s
 *     otherwise
 * @param stays share of either down to which it stays, 0 to 1
 */
record ProbabilityWatch(double soon, double inTime, double stays) {
  /** What it would have raised. */
  List<Warning> raised(WorldDrive drive) {
    List<Warning> each = new ArrayList<>();
    for (Limit limit : drive.world().vehicle().limits().values()) {
      LimitForecast[] toLimit = drive.toLimits().get(limit.channel());
      double[] celsius = drive.celsius().get(limit.channel());
      if (toLimit != null && celsius != null) {
        WarningDelays.watch(
            limit.channel(),
            limit.celsius(),
            drive.seconds(),
            (second, isRaised) ->
                celsius[second] >= limit.celsius()
                    || isLikely(limit.channel(), toLimit[second], isRaised ? stays : 1),
            each);
      }
    }
    return oneAtATime(each);
  }

  private boolean isLikely(Channel channel, @Nullable LimitForecast toLimit, double share) {
    if (toLimit == null) {
      return false;
    }
    double probability =
        AdviceScore.SLOW.contains(channel) ? toLimit.probability600() : toLimit.probability180();
    return toLimit.probability180() >= share * soon || probability >= share * inTime;
  }

  private static List<Warning> oneAtATime(List<Warning> each) {
    List<Warning> merged = new ArrayList<>();
    each.sort(Comparator.comparingInt(Warning::fromSecond));
    for (Warning next : each) {
      if (!merged.isEmpty() && next.fromSecond() <= merged.getLast().untilSecond()) {
        Warning first = merged.removeLast();
        merged.add(
            new Warning(
                first.channel(),
                first.limitCelsius(),
                first.fromSecond(),
                Math.max(first.untilSecond(), next.untilSecond())));
      } else {
        merged.add(next);
      }
    }
    return merged;
  }
}
