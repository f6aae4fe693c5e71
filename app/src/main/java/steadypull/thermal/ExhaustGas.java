package steadypull.thermal;

import java.util.List;

/**
 * Exhaust before the turbine: the charge air and a share of the fuel's heat in it, T = T3 + share *
 * fuel power / (air flow * cp), seen through a probe's lag. So it follows the mixture, not the
 * power: rich and slow is hot.
 */
record ExhaustGas() implements HeatBalance {
  /** Diesel exhaust at 300 to 500 degC, kJ/(kg K) (common practice, no source). */
  private static final double HEAT_CAPACITY = 1.1;

  private static final double LEAST_AIR_FLOW = 0.005;

  /**
   * With less fuel the gas comes out as warm as walls and friction make it, which says nothing of
   * what a pull will: an engine braking down a hill would be taken for a hot one at its foot.
   */
  private static final double LEAST_FUEL_KILOWATTS = 40;

  /** K per square root of a second: no reading down the hill surprises (estimated). */
  private static final double UNFIRED_WANDER = 60;

  /**
   * Share of fuel heat left in the gas (Heywood, Internal Combustion Engine Fundamentals, table
   * 12.1: 0.22 to 0.35 after expansion); base in kelvin; lag in seconds: core and probe 2 to 20 s
   * (common practice).
   */
  @Override
  public List<Parameter> parameters() {
    return List.of(
        Parameter.positive(0.3, 0.2), Parameter.free(0, 50), Parameter.positive(10, 0.4));
  }

  @Override
  public double kelvinPerSecond(double celsius, double[] p, Load load, double[] around) {
    double flow = Math.max(LEAST_AIR_FLOW, load.airKilogramsPerSecond());
    double rise = p[0] * load.fuelKilowatts() / (flow * HEAT_CAPACITY);
    return (around[Store.CHARGE_AIR.index()] + rise + p[1] - celsius) / p[2];
  }

  @Override
  public double returnPerSecond(
      double celsius, double rate, double[] p, Load load, double[] around) {
    return 1 / p[2];
  }

  @Override
  public double disturbance() {
    return 2;
  }

  @Override
  public double wander() {
    return 4;
  }

  @Override
  public double wander(Load load) {
    return load.fuelKilowatts() < LEAST_FUEL_KILOWATTS ? UNFIRED_WANDER : wander();
  }

  @Override
  public double readingKelvin() {
    return 5;
  }

  @Override
  public double probableStart(double outsideCelsius) {
    return 350;
  }
}
