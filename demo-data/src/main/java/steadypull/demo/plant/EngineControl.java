package steadypull.demo.plant;

/**
 * Takes torque away softly above its thresholds, by what its sensors say. A share of full torque
 * per kelvin (common practice: 2 to 4 %), smoothed, never below a floor.
 */
final class EngineControl {
  private static final double SMOOTHING_SECONDS = 2;

  private final double chargeAirThreshold;
  private final double chargeCoolantThreshold;
  private final double engineCoolantThreshold;
  private final double perKelvin;
  private final double floor;
  private final Lag available = new Lag(SMOOTHING_SECONDS, 1);

  EngineControl(Rig rig) {
    chargeAirThreshold = rig.of(RigTrait.DERATE_CHARGE_AIR_DEGC);
    chargeCoolantThreshold =
        rig.cooling() == Rig.Cooling.WATER_TO_AIR
            ? rig.of(RigTrait.DERATE_CHARGE_COOLANT_DEGC)
            : Double.POSITIVE_INFINITY;
    engineCoolantThreshold = rig.of(RigTrait.DERATE_ENGINE_COOLANT_DEGC);
    perKelvin = rig.of(RigTrait.DERATE_SHARE_PER_K);
    floor = rig.of(RigTrait.DERATE_FLOOR);
  }

  /** The share of full torque that is allowed now, 0 to 1. */
  double step(double span, double chargeAir, double chargeCoolant, double engineCoolant) {
    double over =
        Math.max(
            chargeAir - chargeAirThreshold,
            Math.max(
                chargeCoolant - chargeCoolantThreshold, engineCoolant - engineCoolantThreshold));
    double allowed = Math.clamp(1 - perKelvin * over, floor, 1.0);
    return available.follow(allowed, span);
  }

  double available() {
    return available.value();
  }
}
