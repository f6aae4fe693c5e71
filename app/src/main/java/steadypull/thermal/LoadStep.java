package steadypull.thermal;

/**
 * Notices that a load has stepped: its last seconds differ from its last minute by a good part of
 * the most that was seen. Pipeline thread only.
 */
final class LoadStep {
  private static final double FAST_SECONDS = 8;
  private static final double SLOW_SECONDS = 40;
  private static final double STEP_SHARE = 0.25;

  private double fast;
  private double slow;
  private double most;
  private double lastSeconds = Double.NEGATIVE_INFINITY;

  /** Takes the load of a moment, in any unit; says whether it has stepped. */
  boolean accept(double seconds, double load) {
    double step = seconds - lastSeconds;
    lastSeconds = seconds;
    most = Math.max(most, load);
    fast += (load - fast) * -Math.expm1(-step / FAST_SECONDS);
    slow += (load - slow) * -Math.expm1(-step / SLOW_SECONDS);
    boolean hasStepped = Math.abs(fast - slow) > STEP_SHARE * most;
    if (hasStepped) {
      slow = fast;
    }
    return hasStepped;
  }
}
