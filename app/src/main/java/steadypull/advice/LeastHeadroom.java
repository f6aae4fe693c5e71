package steadypull.advice;

import steadypull.thermal.ChannelForecast;
import steadypull.thermal.Fan;
import steadypull.thermal.LimitForecast;

/** How near a channel comes to its limit in the next 3 min, by its median. */
final class LeastHeadroom {
  private static final double WINDOW_SECONDS = 180;

  private LeastHeadroom() {}

  /** Kelvin under the limit at the hottest moment; the channel has a forecast and a limit. */
  static double of(ChannelFacts facts) {
    ChannelForecast.Ready ready = facts.forecast().orElseThrow();
    LimitForecast toLimit = facts.toLimit().orElseThrow();
    return toLimit.limitCelsius() - hottest(ready.fan(), WINDOW_SECONDS);
  }

  /** The median at a time ahead, degC. */
  static double after(Fan fan, double seconds) {
    return fan.at(Fan.MEDIAN, seconds);
  }

  /** The median's highest value from now to a time ahead, degC. */
  static double hottest(Fan fan, double seconds) {
    double hottest = fan.at(Fan.MEDIAN, seconds);
    for (int point = 0; point < fan.size() && fan.secondsAhead(point) <= seconds; point++) {
      hottest = Math.max(hottest, fan.celsius(Fan.MEDIAN, point));
    }
    return hottest;
  }
}
