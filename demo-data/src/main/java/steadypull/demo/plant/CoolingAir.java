package steadypull.demo.plant;

/**
 * The air that passes the radiators: ram air and fan together, as an equivalent road speed, thinned
 * by dirt and by altitude.
 */
final class CoolingAir {
  private static final double REFERENCE_SPEED = 25; // m/s
  private static final double REFERENCE_DENSITY = 1.2; // kg/m3
  private static final double SPEED_EXPONENT = 0.62; // plate fins, estimated
  private static final double FACE_KILOGRAMS_PER_METRE = 0.135; // kg/s per m/s at 1.2 kg/m3
  private static final double HEAT_CAPACITY_AIR = 1007; // J/(kg K), Lemmon et al. 2000 at 40 degC

  private final double ramShare;
  private final double open;
  private final double recirculation;
  private final double condenserHeat;
  private double equivalentSpeed = REFERENCE_SPEED;
  private double density = REFERENCE_DENSITY;
  private double frontCelsius;

  CoolingAir(Rig rig) {
    ramShare = rig.of(RigTrait.RAM_SHARE);
    open = 1 - rig.of(RigTrait.CLOGGED_SHARE);
    recirculation = rig.of(RigTrait.RECIRCULATION_K);
    condenserHeat = rig.of(RigTrait.AIR_CONDITIONING_W);
  }

  void step(double ramSpeed, double fanSpeed, Surroundings around) {
    double ram = Math.max(0, ramSpeed) * ramShare;
    equivalentSpeed = Math.max(1.2, Math.cbrt(cube(ram) + cube(fanSpeed))) * open;
    density = around.airDensity();
    double comesRound = recirculation * Math.exp(-ram / 6);
    frontCelsius = around.airCelsius() + comesRound + condenserHeat / heatFlow();
  }

  private static double cube(double value) {
    return value * value * value;
  }

  /** Heat that the air takes per kelvin, W/K. */
  double heatFlow() {
    double flow = FACE_KILOGRAMS_PER_METRE * equivalentSpeed * density / REFERENCE_DENSITY;
    return flow * HEAT_CAPACITY_AIR;
  }

  /** Conductance of a radiator whose conductance in reference air is given, W/K. */
  double conductance(double inReferenceAir) {
    return inReferenceAir
        * Math.pow(equivalentSpeed / REFERENCE_SPEED, SPEED_EXPONENT)
        * Math.pow(density / REFERENCE_DENSITY, 0.7);
  }

  /** In front of the first radiator. */
  double frontCelsius() {
    return frontCelsius;
  }

  /** Behind a radiator that gives off a heat, in W. */
  double behindCelsius(double heat) {
    return frontCelsius + heat / heatFlow();
  }
}
