package steadypull.demo.plant;

import java.util.List;

/**
 * Gears with hysteresis, and a torque converter that locks. Speeds in r/min, torques in N.m, the
 * road speed in m/s.
 */
final class Driveline {
  private static final double SHIFT_EVERY_SECONDS = 3;
  private static final double CUT_SECONDS = 0.5;
  private static final double OPEN_AFTER_SHIFT_SECONDS = 1.5;
  private static final double LOCKS_ABOVE = 7; // m/s
  private static final double LEAST_SPEED = 1250;
  private static final double GREATEST_SPEED = 3350;

  private final List<Double> ratios;
  private final double axleRatio;
  private final double tyreRadius;
  private final double idleSpeed;
  private final double efficiency;
  private final TorqueCurve curve;
  private int gear = 1;
  private double sinceShift = 10;
  private double speedRatio = 1;
  private double engineSpeed;

  Driveline(Rig rig, TorqueCurve curve) {
    this.curve = curve;
    ratios = rig.gearRatios();
    axleRatio = rig.of(RigTrait.AXLE_RATIO);
    tyreRadius = rig.of(RigTrait.TYRE_RADIUS_M);
    idleSpeed = rig.of(RigTrait.IDLE_SPEED_R_MIN);
    efficiency = rig.of(RigTrait.GEARBOX_EFFICIENCY) * rig.of(RigTrait.AXLE_EFFICIENCY);
    engineSpeed = idleSpeed;
  }

  /** Goes straight into the gear that suits, as after a minute of driving. */
  void settle(double speed, double wheelForce, double pressureKilopascals) {
    for (int i = 0; i < ratios.size(); i++) {
      sinceShift = SHIFT_EVERY_SECONDS + 1;
      chooseGear(speed, wheelForce, pressureKilopascals);
    }
    sinceShift = SHIFT_EVERY_SECONDS + 1;
  }

  /** Lets the gearbox decide, then gives the engine's speed. */
  void step(double span, double speed, double wheelForce, double pressureKilopascals) {
    sinceShift += span;
    chooseGear(speed, wheelForce, pressureKilopascals);
    turnConverter(speed, wheelForce, pressureKilopascals);
  }

  /** Holds a gear, converter locked. */
  void hold(double speed, int heldGear) {
    gear = Math.min(heldGear, ratios.size());
    sinceShift = SHIFT_EVERY_SECONDS;
    engineSpeed = Math.max(idleSpeed, outputSpeed(speed, gear));
    speedRatio = Math.min(1, outputSpeed(speed, gear) / engineSpeed);
  }

  private void chooseGear(double speed, double wheelForce, double pressure) {
    if (sinceShift < SHIFT_EVERY_SECONDS) {
      return;
    }
    if (gear > 1 && wantsLower(speed, wheelForce, pressure)) {
      shiftTo(gear - 1);
    } else if (gear < ratios.size() && allowsHigher(speed, wheelForce, pressure)) {
      shiftTo(gear + 1);
    }
  }

  private boolean wantsLower(double speed, double wheelForce, double pressure) {
    double now = outputSpeed(speed, gear);
    double lower = outputSpeed(speed, gear - 1);
    if (lower > GREATEST_SPEED) {
      return false;
    }
    boolean isShortOfTorque = torqueFor(wheelForce, gear) > 0.97 * curve.at(now, pressure);
    boolean brings = lower * curve.at(lower, pressure) > 1.02 * now * curve.at(now, pressure);
    return now < LEAST_SPEED || (isShortOfTorque && brings);
  }

  private boolean allowsHigher(double speed, double wheelForce, double pressure) {
    double higher = outputSpeed(speed, gear + 1);
    boolean isEasy = torqueFor(wheelForce, gear + 1) < 0.82 * curve.at(higher, pressure);
    return higher > LEAST_SPEED * 1.12
        && (isEasy || outputSpeed(speed, gear) > GREATEST_SPEED * 1.05);
  }

  private void shiftTo(int next) {
    gear = next;
    sinceShift = 0;
  }

  private void turnConverter(double speed, double wheelForce, double pressure) {
    double turbine = outputSpeed(speed, gear);
    double load = Math.clamp(torqueFor(wheelForce, gear) / curve.at(turbine, pressure), 0.0, 1.0);
    double slip =
        0.04 + 0.11 * load; // of an open converter (common practice: 8 to 20 % when heavy)
    double stall = idleSpeed + 1000 * load;
    engineSpeed =
        isLocked(speed) ? Math.max(idleSpeed, turbine) : Math.max(turbine / (1 - slip), stall);
    speedRatio = Math.min(1, turbine / engineSpeed);
  }

  boolean isLocked(double speed) {
    return speed > LOCKS_ABOVE && sinceShift > OPEN_AFTER_SHIFT_SECONDS;
  }

  private double outputSpeed(double speed, int inGear) {
    return speed / (2 * Math.PI * tyreRadius) * 60 * axleRatio * ratios.get(inGear - 1);
  }

  private double torqueFor(double wheelForce, int inGear) {
    return Math.max(0, wheelForce) * tyreRadius / (ratios.get(inGear - 1) * axleRatio * efficiency);
  }

  /** Torque at the crankshaft that would give a force at the wheels in the present gear. */
  double torqueFor(double wheelForce) {
    return torqueFor(wheelForce, gear) / multiplication();
  }

  /** Force at the wheels from a torque at the crankshaft. */
  double wheelForce(double torque) {
    double out = torque * multiplication() * ratios.get(gear - 1) * axleRatio / tyreRadius;
    return torque >= 0 ? out * efficiency : out / efficiency;
  }

  /** A converter multiplies torque the more it slips (estimated: 1.8 at stall). */
  private double multiplication() {
    return 1 + 0.8 * (1 - speedRatio);
  }

  /** Share of the torque that a gear change leaves. */
  double torqueLeftByShift() {
    return sinceShift < CUT_SECONDS ? 0.45 : 1;
  }

  /** Heat that converter and gears leave in the gearbox, W. */
  double gearboxHeat(double torque, double gearboxEfficiency) {
    double power = Math.abs(torque) * engineSpeed * 2 * Math.PI / 60;
    double behindConverter = power * speedRatio * multiplication();
    return (power - behindConverter) + behindConverter * (1 - gearboxEfficiency);
  }

  int gear() {
    return gear;
  }

  double engineSpeed() {
    return engineSpeed;
  }
}
