package steadypull.demo.plant;

/** Engine coolant behind a slow thermostat, with a viscous fan that engages late. */
final class EngineCooling {
  private static final double STILL_CONDUCTANCE = 40; // block to bay air, W/K, estimated

  private final double capacity;
  private final double radiator;
  private final double opens;
  private final double full;
  private final double engages;
  private final double fullFan;
  private final double fanAir;
  private final double fanPower;
  private final Lag valve;
  private final Lag clutch;
  private double celsius;
  private double heatRejected;

  EngineCooling(Rig rig, double startCelsius) {
    capacity = rig.of(RigTrait.ENGINE_HEAT_CAPACITY_J_PER_K);
    radiator = rig.of(RigTrait.ENGINE_RADIATOR_W_PER_K);
    opens = rig.of(RigTrait.THERMOSTAT_OPENS_DEGC);
    full = rig.of(RigTrait.THERMOSTAT_FULL_DEGC);
    engages = rig.of(RigTrait.FAN_ENGAGES_DEGC);
    fullFan = rig.of(RigTrait.FAN_FULL_DEGC);
    fanAir = rig.of(RigTrait.FAN_AIR_M_PER_S);
    fanPower = rig.of(RigTrait.FAN_POWER_W);
    celsius = startCelsius;
    valve = new Lag(rig.of(RigTrait.THERMOSTAT_LAG_S), share(opens, full));
    clutch = new Lag(rig.of(RigTrait.FAN_LAG_S), share(engages, fullFan));
  }

  private double share(double from, double to) {
    return Math.clamp((celsius - from) / Math.max(1, to - from), 0.0, 1.0);
  }

  /**
   * Moves on by a span.
   *
   * @param heatIn from engine, oil and gearbox, W
   * @param airCelsius in front of the engine's radiator
   */
  void step(double span, double heatIn, double airCelsius, CoolingAir coolingAir) {
    double opened = valve.follow(share(opens, full), span);
    clutch.follow(share(engages, fullFan), span);
    double largest = coolingAir.conductance(radiator);
    double limited = -Math.expm1(-largest / coolingAir.heatFlow()) * coolingAir.heatFlow();
    // A valve a third open already lets two thirds of the heat through.
    double through = opened * (2 - opened);
    double conductance = STILL_CONDUCTANCE + (limited - STILL_CONDUCTANCE) * through;
    heatRejected = conductance * (celsius - airCelsius);
    celsius += span * (heatIn - heatRejected) / capacity;
  }

  /** Air that the fan moves, as an equivalent road speed, m/s. */
  double fanSpeed(double engineSpeed) {
    return fanAir * slipping() * engineSpeed / 3000;
  }

  /** Power that the fan takes, W. */
  double fanPower(double engineSpeed) {
    double turning = slipping() * engineSpeed / 3000;
    return fanPower * turning * turning * turning;
  }

  /** A viscous clutch never lets go fully. */
  private double slipping() {
    return 0.2 + 0.8 * clutch.value();
  }

  double fanEngagement() {
    return clutch.value();
  }

  double celsius() {
    return celsius;
  }

  double heatRejected() {
    return heatRejected;
  }

  double heatStored() {
    return celsius * capacity;
  }
}
