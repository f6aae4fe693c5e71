package steadypull.vehicle.role;

/** An exponential mean over uneven steps of time. */
final class SlowMean {
  private static final double MICROS = 1e6;

  private final double timeConstantSeconds;
  private double mean;
  private long lastMicros;
  private boolean isBegun;

  SlowMean(double timeConstantSeconds) {
    this.timeConstantSeconds = timeConstantSeconds;
  }

  /** Takes a value and gives the mean; after a long break it begins anew. */
  double next(long micros, double value) {
    double span = (micros - lastMicros) / MICROS;
    boolean goesOn = isBegun && span >= 0 && span <= timeConstantSeconds;
    mean = goesOn ? mean + (1 - Math.exp(-span / timeConstantSeconds)) * (value - mean) : value;
    lastMicros = micros;
    isBegun = true;
    return mean;
  }
}
