package steadypull.demo.plant;

/** Turns a duty into a force at the wheels, looking at nothing but speed and the road. */
final class Driver {
  private static final double GAIN = 0.3; // m/s2 per m/s, estimated
  private static final double HARDEST_PULL = 0.6; // m/s2
  private static final double HARDEST_BRAKING = 1.5; // m/s2

  private final double inertia;

  Driver(double inertia) {
    this.inertia = inertia;
  }

  /**
   * The force wished at the wheels, N; negative means braking or overrun.
   *
   * @param resistance what holds the vehicle back now, N
   */
  double wheelForce(double speed, double wishedSpeed, double resistance) {
    double pull = Math.clamp(GAIN * (wishedSpeed - speed), -HARDEST_BRAKING, HARDEST_PULL);
    return resistance + inertia * pull;
  }
}
