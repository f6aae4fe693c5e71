package steadypull.thermal;

/**
 * First-order rise to a plateau, told from now: T(s) = level + slope (1 - exp(-k s)) / k, with s in
 * seconds, negative in the past. It solves dT/ds = k (plateau - T) with plateau = level + slope / k
 * (first-order lag; any heat store under a steady load, Incropera and DeWitt, Fundamentals of Heat
 * and Mass Transfer, section 5.1, lumped capacitance). As k goes to 0 it is a straight line; since
 * k is above 0 its slope now is never steeper than the mean slope behind it.
 *
 * <p>Parameters: level in degC, slope in K/s, natural logarithm of k in 1/s. Stateless.
 */
final class RiseCurve implements CurveFit.Curve {
  static final int LEVEL = 0;
  static final int SLOPE = 1;
  static final int LOG_RATE = 2;

  /** Below this k s the series is exact to 1e-10. */
  private static final double SMALL = 1e-5;

  @Override
  public double value(double seconds, double[] parameters) {
    return parameters[LEVEL] + parameters[SLOPE] * reach(seconds, parameters[LOG_RATE]);
  }

  @Override
  public double[] slopes(double seconds, double[] parameters) {
    double rate = Math.exp(parameters[LOG_RATE]);
    double reach = reach(seconds, parameters[LOG_RATE]);
    double bend =
        Math.abs(rate * seconds) < SMALL
            ? -rate * seconds * seconds / 2
            : seconds * Math.exp(-rate * seconds) - reach;
    return new double[] {1, reach, parameters[SLOPE] * bend};
  }

  /** Seconds that a straight line would need to come as far: (1 - exp(-k s)) / k. */
  static double reach(double seconds, double logRate) {
    double rate = Math.exp(logRate);
    double turned = rate * seconds;
    return Math.abs(turned) < SMALL ? seconds * (1 - turned / 2) : -Math.expm1(-turned) / rate;
  }
}
