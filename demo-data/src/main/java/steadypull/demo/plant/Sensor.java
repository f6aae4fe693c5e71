package steadypull.demo.plant;

/**
 * A sensor or a calculated value of the control units. Lags and noises are estimated (common
 * practice, no source); temperatures step by 1 degC and are cut down, not rounded.
 */
public enum Sensor {
  ENGINE_COOLANT("engine_coolant_temp", 4, 0.08, 1),
  CHARGE_COOLANT("charge_coolant_temp", 4, 0.08, 1),
  CHARGE_AIR_IN("charge_air_temp_in", 5, 0.3, 1),
  CHARGE_AIR_OUT("charge_air_temp_out", 3, 0.15, 1),
  INTAKE_AIR("intake_air_temp", 5, 0.1, 1),
  OUTSIDE_AIR("ambient_air_temp", 20, 0.05, 1),
  ENGINE_OIL("engine_oil_temp", 6, 0.08, 1),
  GEARBOX_FLUID("transmission_fluid_temp", 4, 0.05, 0.0625),
  EXHAUST_BEFORE_TURBINE("exhaust_temp_before_turbine", 4, 1, 0.1),
  EXHAUST_AFTER_TURBINE("exhaust_temp_after_turbine", 5, 1, 0.1),
  BAROMETER("barometric_pressure", 1, 0.05, 1),
  MANIFOLD_PRESSURE("manifold_pressure", 0.1, 0.5, 0.03125),
  AIR_FLOW("air_mass_flow", 0.2, 0.6, 0.01),
  ENGINE_SPEED("engine_speed", 0.1, 2, 0.25),
  VEHICLE_SPEED("vehicle_speed", 0.2, 0.05, 1),
  ENGINE_LOAD("engine_load", 0.2, 0.2, 100.0 / 255),
  PEDAL("accelerator_pedal", 0.1, 0.1, 100.0 / 255),
  DEMANDED_TORQUE("demanded_torque", 0.1, 0.1, 1),
  DELIVERED_TORQUE("delivered_torque", 0.1, 0.1, 1),
  FRICTION_TORQUE("friction_torque", 0.1, 0, 1),
  REFERENCE_TORQUE("reference_torque", 0, 0, 1),
  FUEL_RATE("fuel_rate", 0.3, 0.05, 0.05),
  GEAR("gear", 0, 0, 1),
  SUPPLY_VOLTAGE("module_voltage", 0.5, 0.02, 0.001);

  private final String channel;
  private final double lagSeconds;
  private final double noise;
  private final double step;

  Sensor(String channel, double lagSeconds, double noise, double step) {
    this.channel = channel;
    this.lagSeconds = lagSeconds;
    this.noise = noise;
    this.step = step;
  }

  /** What the trade calls the quantity, words joined by underscores; the unit is fixed with it. */
  public String channel() {
    return channel;
  }

  double lagSeconds() {
    return lagSeconds;
  }

  /** Standard deviation, in the quantity's unit. */
  double noise() {
    return noise;
  }

  /** The value cut down to the sensor's step. */
  double cut(double value) {
    return Math.floor(value / step + 1e-9) * step;
  }
}
