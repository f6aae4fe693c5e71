package steadypull.demo.plant;

/** A quantity that follows another with a first-order lag. */
final class Lag {
  private final double seconds;
  private double value;

  Lag(double seconds, double start) {
    this.seconds = seconds;
    this.value = start;
  }

  /** Moves towards a target over a span; exact while the target stands still. */
  double follow(double target, double span) {
    value += (target - value) * -Math.expm1(-span / seconds);
    return value;
  }

  double value() {
    return value;
  }
}
