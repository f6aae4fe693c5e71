package steadypull.demo.plant;

/**
 * A water-cooled charge cooler with its circuit: warm water leaves the cooler, passes the radiator
 * and the tank, and comes back. Two heat stores, warm and cold, with the pump between them.
 */
final class WaterChargeCooler implements ChargeCooler {
  // Ethylene glycol 50 % by volume at 60 degC, fit of ASHRAE handbook data.
  private static final double COOLANT_DENSITY = 1.052; // kg/L
  private static final double COOLANT_HEAT = 3435; // J/(kg K)
  private static final double WARM_SHARE = 0.35; // of the circuit, estimated

  private final double conductance;
  private final double radiator;
  private final double pumpHeatFlow;
  private final double warmCapacity;
  private final double coldCapacity;
  private double warm;
  private double cold;
  private double out;
  private double heatFromAir;
  private double heatRejected;

  WaterChargeCooler(Rig rig, double startCelsius) {
    conductance = rig.of(RigTrait.CHARGE_COOLER_W_PER_K);
    radiator = rig.of(RigTrait.CHARGE_RADIATOR_W_PER_K);
    pumpHeatFlow = rig.of(RigTrait.CHARGE_PUMP_L_PER_MIN) / 60 * COOLANT_DENSITY * COOLANT_HEAT;
    double capacity =
        rig.of(RigTrait.CHARGE_CIRCUIT_LITRES) * COOLANT_DENSITY * COOLANT_HEAT
            + rig.of(RigTrait.CHARGE_CIRCUIT_METAL_J_PER_K);
    warmCapacity = capacity * WARM_SHARE;
    coldCapacity = capacity - warmCapacity;
    warm = startCelsius;
    cold = startCelsius;
    out = startCelsius;
  }

  @Override
  public void step(double span, double airFlow, double inCelsius, CoolingAir coolingAir) {
    double airHeatFlow = Math.max(1, airFlow * HEAT_CAPACITY_AIR);
    double lesser = Math.min(airHeatFlow, pumpHeatFlow);
    double ratio = Math.min(0.999, lesser / Math.max(airHeatFlow, pumpHeatFlow));
    heatFromAir =
        ChargeCooler.effectiveness(conductance / lesser, ratio) * lesser * (inCelsius - cold);
    out = inCelsius - heatFromAir / airHeatFlow;
    double moved = pumpHeatFlow * (warm - cold);
    double radiatorMean = 0.5 * (warm + cold);
    heatRejected = coolingAir.conductance(radiator) * (radiatorMean - coolingAir.frontCelsius());
    warm += span * (heatFromAir - moved) / warmCapacity;
    cold += span * (moved - heatRejected) / coldCapacity;
  }

  @Override
  public double outCelsius() {
    return out;
  }

  @Override
  public double heatFromAir() {
    return heatFromAir;
  }

  @Override
  public double heatRejected() {
    return heatRejected;
  }

  @Override
  public double coolantCelsius() {
    return cold;
  }

  @Override
  public double heatStored() {
    return warm * warmCapacity + cold * coldCapacity;
  }
}
