package steadypull.demo.plant;

/** Full-load torque over engine speed: a turbo-diesel's plateau (estimated; common practice). */
final class TorqueCurve {
  private static final double[] SPEED = {600, 900, 1300, 1600, 2000, 2500, 3000, 3300, 3700, 4200};
  private static final double[] SHARE = {0.35, 0.5, 0.8, 0.96, 1, 1, 0.95, 0.88, 0.68, 0.05};
  private static final double LIGHT_AIR = 0.25; // share of pressure loss that the turbo cannot mend

  private final double peak;

  TorqueCurve(Rig rig) {
    peak = rig.of(RigTrait.PEAK_TORQUE_NM);
  }

  /** Greatest torque at the crankshaft without derating, N.m. */
  double at(double engineSpeed, double pressureKilopascals) {
    double thinAir = 1 - LIGHT_AIR * Math.max(0, 1 - pressureKilopascals / 101.325);
    return peak * share(engineSpeed) * thinAir;
  }

  private static double share(double engineSpeed) {
    if (engineSpeed <= SPEED[0]) {
      return SHARE[0];
    }
    for (int i = 1; i < SPEED.length; i++) {
      if (engineSpeed <= SPEED[i]) {
        double part = (engineSpeed - SPEED[i - 1]) / (SPEED[i] - SPEED[i - 1]);
        return SHARE[i - 1] + part * (SHARE[i] - SHARE[i - 1]);
      }
    }
    return SHARE[SHARE.length - 1];
  }
}
