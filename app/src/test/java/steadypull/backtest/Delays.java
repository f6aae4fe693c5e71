package steadypull.backtest;

import java.util.List;
import steadypull.channel.Channel;
import steadypull.review.Warning;

/** The delays of the shipped rules: raised after 3 s, cleared after 20 s. */
final class Delays {
  private static final int ON_DELAY_SECONDS = 3;
  private static final int OFF_DELAY_SECONDS = 20;

  /** From here on a straight line has a minute to lie in. */
  private static final int FIRST_SECOND = 61;

  private Delays() {}

  /** Whether somebody would warn now. */
  interface Warns {
    /**
     * Judges a second.
     *
     * @param isRaised whether it stands already
     */
    boolean at(int second, boolean isRaised);
  }

  /** Adds what would have been raised of one channel. */
  static void watch(Channel channel, double limit, int seconds, Warns warns, List<Warning> raised) {
    int turning = 0;
    int from = 0;
    for (int second = FIRST_SECOND; second <= seconds; second++) {
      boolean isRaised = from > 0;
      turning = warns.at(second, isRaised) == isRaised ? 0 : turning + 1;
      if (!isRaised && turning > ON_DELAY_SECONDS) {
        from = second;
        turning = 0;
      } else if (isRaised && turning > OFF_DELAY_SECONDS) {
        raised.add(new Warning(channel, limit, from, second));
        from = 0;
        turning = 0;
      }
    }
    if (from > 0) {
      raised.add(new Warning(channel, limit, from, seconds + 1));
    }
  }
}
