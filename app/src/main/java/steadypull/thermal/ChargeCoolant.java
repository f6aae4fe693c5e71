package steadypull.thermal;

import java.util.List;

/**
 * The water circuit of a water-to-air charge cooler: one store. In comes what the charge air gives
 * up, air flow * cp * (inlet - outlet); out goes conductance * (coolant - outside).
 */
record ChargeCoolant() implements HeatBalance {
  /** Place of the heat capacity among the parameters. */
  static final int JOULES_PER_KELVIN = 0;

  /** Place of the conductance at 25 m/s. */
  static final int WATTS_PER_KELVIN = 1;

  /** Dry air at 100 degC, J/(kg K) (equation of state of Lemmon et al., 2000). */
  private static final double AIR_HEAT_CAPACITY = 1011;

  /**
   * Heat capacity in J/K: 6 L of 50/50 coolant is 22 kJ/K (ASHRAE data: 1040 kg/m3, 3.5 kJ/(kg K)),
   * core, hoses and radiator half as much again. Conductance in W/K at 25 m/s: 8 to 30 kW at 30 to
   * 60 K above outside. Share of it at standstill, from a fan. Kelvin that the air before the
   * radiator is warmer than outside: a condenser of 2 to 6 kW in front of it. Lag of the sensor in
   * seconds: the probe, and half a turn of a circuit of 4 to 14 L at 10 to 30 L/min. Estimated;
   * common practice.
   */
  @Override
  public List<Parameter> parameters() {
    return List.of(
        Parameter.positive(28_000, 0.5),
        Parameter.positive(300, 0.8),
        Parameter.positive(0.35, 0.5),
        Parameter.free(4, 5),
        Parameter.positive(8, 0.8));
  }

  @Override
  public double kelvinPerSecond(double celsius, double[] p, Load load, double[] around) {
    double given = around[Store.CHARGE_INLET.index()] - around[Store.CHARGE_AIR.index()];
    double heat = load.airKilogramsPerSecond() * AIR_HEAT_CAPACITY * given;
    // No condenser warms the air by more than was learnt of all that stands before the radiator.
    double warmer = p[3] - Math.clamp(p[3], 0.0, load.cores().coolerKelvin());
    return (heat - conductance(p, load) * (celsius - load.outsideCelsius() - warmer)) / p[0];
  }

  private static double conductance(double[] p, Load load) {
    double standing = Math.min(1, p[2]);
    return p[1] * load.densityShare() * (standing + (1 - standing) * load.ramAir());
  }

  @Override
  public double returnPerSecond(
      double celsius, double rate, double[] p, Load load, double[] around) {
    return conductance(p, load) / p[0];
  }

  @Override
  public double disturbance() {
    return 0.05;
  }

  /**
   * The pump brings hot water round with a delay of ten seconds or more, so a reading may stand
   * still and then leap by 20 K within half a minute (common practice, no source).
   */
  @Override
  public double firstDisturbance() {
    return 0.6;
  }

  @Override
  public double firstWander() {
    return 2;
  }

  @Override
  public double wander() {
    return 0.05;
  }

  @Override
  public double sensorLagSeconds(double[] p) {
    return p[4];
  }

  @Override
  public double probableStart(double outsideCelsius) {
    return outsideCelsius + 10;
  }
}
