package steadypull.thermal;

import java.util.List;

/**
 * Engine oil: one store that settles above the engine coolant by what friction and fuel give it.
 */
record EngineOil() implements HeatBalance {
  /**
   * Kelvin above coolant per 100 kW of fuel, base in kelvin, lag in seconds. Lag: 150 to 400 s
   * where the sump cools itself (common practice), but 30 to 60 s behind a cooler in the coolant
   * that passes 500 to 1000 W/K (30 kJ/K of oil and pan, computed).
   */
  @Override
  public List<Parameter> parameters() {
    return List.of(Parameter.positive(4, 0.5), Parameter.free(0, 5), Parameter.positive(120, 0.7));
  }

  @Override
  public double kelvinPerSecond(double celsius, double[] p, Load load, double[] around) {
    double settles =
        around[Store.ENGINE_COOLANT.index()] + p[1] + p[0] * load.fuelKilowatts() / 100;
    return (settles - celsius) / p[2];
  }

  @Override
  public double returnPerSecond(
      double celsius, double rate, double[] p, Load load, double[] around) {
    return 1 / p[2];
  }

  @Override
  public double disturbance() {
    return 0.02;
  }

  @Override
  public double wander() {
    return 0.03;
  }

  @Override
  public double probableStart(double outsideCelsius) {
    return 85;
  }
}
