package steadypull.demo.plant;

/** Torque, fuel and where the fuel's heat goes. Torques in N.m, heats in W, fuel in kg/s. */
final class Engine {
  private static final double HEATING_VALUE = 42.8e6; // diesel, J/kg (from memory, 42.6 to 43.1)

  private final double idleSpeed;
  private final double indicatedEfficiency;
  private final double airFuelRatio;
  private final double smokeRatio;
  private final double coolantShare;
  private final double oilShare;
  private final double radiatedShare;
  private final double displacement;
  private double demanded;
  private double delivered;
  private double friction;
  private double fuel;

  Engine(Rig rig) {
    idleSpeed = rig.of(RigTrait.IDLE_SPEED_R_MIN);
    indicatedEfficiency = rig.of(RigTrait.INDICATED_EFFICIENCY);
    airFuelRatio = rig.of(RigTrait.AIR_FUEL_RATIO);
    smokeRatio = rig.of(RigTrait.SMOKE_AIR_FUEL_RATIO);
    coolantShare = rig.of(RigTrait.COOLANT_HEAT_SHARE);
    oilShare = rig.of(RigTrait.OIL_HEAT_SHARE);
    radiatedShare = rig.of(RigTrait.RADIATED_HEAT_SHARE);
    displacement = rig.of(RigTrait.DISPLACEMENT_L);
  }

  /**
   * Burns what the driver asks for, as far as it is allowed.
   *
   * @param wish torque at the crankshaft that the driver asks for; negative means overrun
   * @param full greatest torque without derating
   * @param available share of full torque that the engine control allows, 0 to 1
   * @param left share of the torque that a gear change leaves, 0 to 1
   * @param airFlow air that is there to burn with, kg/s
   */
  void step(double wish, double full, double available, double left, double speed, double airFlow) {
    friction = frictionAt(speed);
    demanded = Math.min(wish, full);
    double allowed = Math.min(demanded, full * available) * left;
    double smokeLimit = torqueFrom(airFlow / smokeRatio, speed) - friction;
    double fuelled = Math.min(allowed, smokeLimit);
    boolean isOverrun = fuelled <= -friction && speed > idleSpeed * 1.2;
    delivered = isOverrun ? -friction : Math.max(fuelled, -friction);
    fuel = isOverrun ? 0 : fuelFor(delivered + friction, speed);
  }

  /** Air that boost control wants for the torque asked for, kg/s. */
  double wishedAirFlow(double wish, double full, double available, double speed) {
    double torque = Math.max(0, Math.min(wish, full * available)) + frictionAt(speed);
    return fuelFor(torque, speed) * airFuelRatio;
  }

  /** Friction and pumping, N.m (estimated: 1.1 bar at idle, 2 bar at 3300 r/min). */
  private double frictionAt(double speed) {
    double meanPressure = 0.9e5 + 0.33e5 * (speed / 1000);
    return meanPressure * displacement / 1000 / (4 * Math.PI);
  }

  private double fuelFor(double indicatedTorque, double speed) {
    return indicatedTorque * radians(speed) / (indicatedEfficiency * HEATING_VALUE);
  }

  private double torqueFrom(double fuelFlow, double speed) {
    return fuelFlow * indicatedEfficiency * HEATING_VALUE / radians(speed);
  }

  private static double radians(double revolutionsPerMinute) {
    return revolutionsPerMinute * 2 * Math.PI / 60;
  }

  double heatOfFuel() {
    return fuel * HEATING_VALUE;
  }

  double shaftPower(double speed) {
    return delivered * radians(speed);
  }

  double heatIntoCoolant() {
    return heatOfFuel() * coolantShare;
  }

  /** Piston cooling and a part of the friction end in the oil (estimated). */
  double heatIntoOil(double speed) {
    return heatOfFuel() * oilShare + 0.2 * friction * radians(speed);
  }

  double heatRadiated() {
    return heatOfFuel() * radiatedShare;
  }

  /** What remains leaves through the exhaust port. */
  double heatIntoExhaust(double speed) {
    double inside = shaftPower(speed) + heatIntoCoolant() + heatIntoOil(speed) + heatRadiated();
    return Math.max(0, heatOfFuel() - inside);
  }

  double demanded() {
    return demanded;
  }

  double delivered() {
    return delivered;
  }

  double friction() {
    return friction;
  }

  double fuel() {
    return fuel;
  }
}
