package steadypull.demo.plant;

/**
 * One figure of a rig. Every default is estimated for an invented diesel tow vehicle so that its
 * temperatures, powers and flows fall where such vehicles are seen (common practice, no source); a
 * world is varied by changing traits within their ranges.
 */
public enum RigTrait {
  MASS_KG(7200, 1000, 60_000),
  DRAG_AREA_M2(3.8, 0.5, 15),
  ROLLING_RESISTANCE(0.011, 0.003, 0.05),
  TYRE_RADIUS_M(0.39, 0.2, 0.8),
  /** Share of the mass that turning parts add to inertia. */
  ROTATING_MASS_SHARE(0.06, 0, 0.5),
  AXLE_RATIO(3.7, 1, 10),
  GEARBOX_EFFICIENCY(0.965, 0.8, 1),
  AXLE_EFFICIENCY(0.96, 0.8, 1),

  /** Greatest torque at the crankshaft. */
  PEAK_TORQUE_NM(640, 100, 4000),
  /** What the percent torques refer to; indicated, friction included. */
  REFERENCE_TORQUE_NM(740, 100, 5000),
  DISPLACEMENT_L(4.5, 1, 20),
  IDLE_SPEED_R_MIN(720, 400, 1200),
  INDICATED_EFFICIENCY(0.46, 0.3, 0.55),
  /** Mass of air per mass of fuel that the boost control aims at. */
  AIR_FUEL_RATIO(23, 17, 40),
  /** Below this the smoke limit cuts fuel. */
  SMOKE_AIR_FUEL_RATIO(16.5, 14.6, 22),
  VOLUMETRIC_EFFICIENCY(0.9, 0.5, 1.1),
  COOLANT_HEAT_SHARE(0.165, 0.05, 0.4),
  OIL_HEAT_SHARE(0.028, 0, 0.2),
  RADIATED_HEAT_SHARE(0.03, 0, 0.2),

  COMPRESSOR_EFFICIENCY(0.70, 0.4, 0.85),
  BOOST_LAG_S(0.8, 0.1, 10),
  HIGHEST_MANIFOLD_KPA(310, 110, 600),
  HIGHEST_COMPRESSION(3.6, 1.2, 6),
  /** How slowly the compressor housing and the pipe behind it take the air's temperature. */
  COMPRESSOR_HOUSING_LAG_S(9, 0.1, 120),
  /** How much warmer than outside air the compressor's inlet is. */
  INLET_HEATING_K(4, 0, 40),

  CHARGE_COOLER_W_PER_K(570, 50, 5000),
  CHARGE_CIRCUIT_LITRES(8, 1, 40),
  /** Metal of the charge cooler and its radiator. */
  CHARGE_CIRCUIT_METAL_J_PER_K(7000, 0, 100_000),
  CHARGE_PUMP_L_PER_MIN(18, 0.5, 120),
  /** At 25 m/s of cooling air of 1.2 kg/m3. */
  CHARGE_RADIATOR_W_PER_K(245, 20, 5000),

  ENGINE_HEAT_CAPACITY_J_PER_K(150_000, 10_000, 1_000_000),
  /** Thermostat fully open, at 25 m/s of cooling air of 1.2 kg/m3. */
  ENGINE_RADIATOR_W_PER_K(1950, 100, 20_000),
  THERMOSTAT_OPENS_DEGC(86, 60, 110),
  THERMOSTAT_FULL_DEGC(95, 61, 120),
  THERMOSTAT_LAG_S(12, 0.1, 120),
  FAN_ENGAGES_DEGC(97, 60, 130),
  FAN_FULL_DEGC(105, 61, 140),
  FAN_LAG_S(14, 0.1, 120),
  /** Cooling air that the fan moves at 3000 r/min, as an equivalent road speed. */
  FAN_AIR_M_PER_S(15, 0, 60),
  /** Power that the fan takes at 3000 r/min, fully engaged. */
  FAN_POWER_W(6000, 0, 60_000),

  OIL_HEAT_CAPACITY_J_PER_K(30_000, 1000, 500_000),
  OIL_COOLER_W_PER_K(850, 50, 10_000),
  GEARBOX_HEAT_CAPACITY_J_PER_K(42_000, 1000, 500_000),
  /** At 25 m/s of cooling air of 1.2 kg/m3. */
  GEARBOX_COOLER_W_PER_K(90, 5, 3000),

  /** Share of the radiators' face that dirt closes. */
  CLOGGED_SHARE(0, 0, 0.8),
  /** Share of road speed that reaches the radiators as cooling air. */
  RAM_SHARE(1, 0.1, 1.5),
  /** Heat that the condenser puts in front of the radiators. */
  AIR_CONDITIONING_W(4000, 0, 20_000),
  /** How far hot air comes round to the front of the radiators while the vehicle stands. */
  RECIRCULATION_K(12, 0, 60),

  DERATE_CHARGE_AIR_DEGC(105, 40, 200),
  DERATE_CHARGE_COOLANT_DEGC(103, 40, 200),
  DERATE_ENGINE_COOLANT_DEGC(112, 60, 150),
  /** Share of full torque taken away per kelvin above a threshold. */
  DERATE_SHARE_PER_K(0.03, 0, 0.5),
  /** Least share of full torque that derating leaves. */
  DERATE_FLOOR(0.4, 0.05, 1),

  /** Multiplies the noise of every sensor. */
  SENSOR_NOISE(1, 0, 20),
  /** Multiplies the lag of every sensor. */
  SENSOR_LAG(1, 0.05, 20);

  private final double usual;
  private final double lowest;
  private final double highest;

  RigTrait(double usual, double lowest, double highest) {
    this.usual = usual;
    this.lowest = lowest;
    this.highest = highest;
  }

  double usual() {
    return usual;
  }

  /** The least legal value, in the unit that the name ends with. */
  public double lowest() {
    return lowest;
  }

  /** The greatest legal value, in the unit that the name ends with. */
  public double highest() {
    return highest;
  }
}
