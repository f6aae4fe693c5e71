package steadypull.demo.plant;

/** A charge cooler in the outside air: fast, and only as good as the air that passes it. */
final class AirChargeCooler implements ChargeCooler {
  private static final double SHARE_OF_FACE = 0.9; // of the cooling air, estimated

  private final double conductance;
  private final double metal;
  private double core;
  private double out;
  private double heatFromAir;
  private double heatRejected;
  private double front;

  AirChargeCooler(Rig rig, double startCelsius) {
    conductance = rig.of(RigTrait.CHARGE_COOLER_W_PER_K);
    metal = rig.of(RigTrait.CHARGE_CIRCUIT_METAL_J_PER_K) + 500;
    core = startCelsius;
    out = startCelsius;
    front = startCelsius;
  }

  @Override
  public void step(double span, double airFlow, double inCelsius, CoolingAir coolingAir) {
    front = coolingAir.frontCelsius();
    double airHeatFlow = Math.max(1, airFlow * HEAT_CAPACITY_AIR);
    double inner = 2 * conductance; // half the resistance inside, half outside, in reference air
    double toCore = -Math.expm1(-inner / airHeatFlow);
    heatFromAir = toCore * airHeatFlow * (inCelsius - core);
    out = inCelsius - heatFromAir / airHeatFlow;
    double cooling = coolingAir.heatFlow() * SHARE_OF_FACE;
    double taken = -Math.expm1(-coolingAir.conductance(2 * conductance) / cooling) * cooling;
    heatRejected = taken * (core - front);
    core += span * (heatFromAir - heatRejected) / metal;
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
    return front;
  }

  @Override
  public double heatStored() {
    return core * metal;
  }
}
