package steadypull.review;

import java.util.List;
import steadypull.channel.Channel;

/**
 * The delays of the shipped rules, for forecasters that have none of their own: raised after 3 s,
 * taken back after 20 s. Pure functions, any thread.
 */
public final class WarningDelays {
  private static final int ON_DELAY_SECONDS = 3;
  private static final int OFF_DELAY_SECONDS = 20;

  /** From here on a straight line has a minute to lie in. */
  private static final int FIRST_SECOND = 60;

  private WarningDelays() {}

  /** Whether somebody would warn now. */
  public interface Warns {
    /**
     * Judges a second.
     *
     * @param isRaised whether it stands already
     */
    boolean at(int second, boolean isRaised);
  }

  /**
   * Adds what would have been warned of one channel.
   *
   * @param seconds how long the drive was
   */
  public static void watch(
      Channel channel, double limit, int seconds, Warns warns, List<Warning> warnings) {
    int turning = 0;
    int from = 0;
    for (int second = FIRST_SECOND; second <= seconds; second++) {
      boolean isRaised = from > 0;
      turning = warns.at(second, isRaised) == isRaised ? 0 : turning + 1;
      if (!isRaised && turning > ON_DELAY_SECONDS) {
        from = second;
        turning = 0;
      } else if (isRaised && turning > OFF_DELAY_SECONDS) {
        warnings.add(new Warning(channel, limit, from, second));
        from = 0;
        turning = 0;
      }
    }
    if (from > 0) {
      warnings.add(new Warning(channel, limit, from, seconds + 1));
    }
  }
}
