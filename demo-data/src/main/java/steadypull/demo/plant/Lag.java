package steadypull.demo.plant;

/** A quantity that follows another with a first-order lag. */
final class Lag {
  private final double seconds;
  private double value;
  private double lastSpan = Double.NaN;
  private double share; // of the way to the target that the last span goes

  Lag(double seconds, double start) {
    this.seconds = seconds;
    this.value = start;
  }

  /** Moves towards a target over a span; exact while the target stands still. */
  double follow(double target, double span) {
    if (span != lastSpan) {
      share = -Math.expm1(-span / seconds);
      lastSpan = span;
    }
    value += (target - value) * share;
    return value;
  }

  double value() {
    return value;
  }
}
