package steadypull.review;

import java.util.Arrays;

/**
 * Whether a driver eased the load after a warning: within a minute less power at less speed, and
 * not because the engine control took it. What share of either counts is our choice: a steeper road
 * takes speed and no power, a crest power and no speed. Stateless.
 */
public final class EasedLoad {
  private static final int BEFORE_SECONDS = 15;
  private static final int WITHIN_SECONDS = 60;
  private static final double POWER_LEFT = 0.85;
  private static final double SPEED_LEFT = 0.95;

  private EasedLoad() {}

  /**
   * Looks at the minute behind a warning.
   *
   * @param second of the warning
   * @param power of the engine in any unit, by second, NaN where unknown
   * @param speed of the road in any unit, likewise, as long
   * @param isCut whether torque was cut for heat, likewise
   * @return whether the load was eased; false where power or speed are unknown
   */
  public static boolean isSeen(int second, double[] power, double[] speed, boolean[] isCut) {
    int before = Math.max(1, second - BEFORE_SECONDS);
    double hadPower = mean(power, before, second);
    double hadSpeed = mean(speed, before, second);
    int last = Math.min(power.length - 1, second + WITHIN_SECONDS);
    for (int from = second; from + BEFORE_SECONDS <= last; from++) {
      int until = from + BEFORE_SECONDS;
      if (isCut[from] || isCut[until]) {
        return false;
      }
      if (mean(power, from, until) <= POWER_LEFT * hadPower
          && mean(speed, from, until) <= SPEED_LEFT * hadSpeed) {
        return true;
      }
    }
    return false;
  }

  private static double mean(double[] values, int from, int until) {
    return Arrays.stream(values, from, Math.max(from + 1, until)).average().orElse(Double.NaN);
  }
}
