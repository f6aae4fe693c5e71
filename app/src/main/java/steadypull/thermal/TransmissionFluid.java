package steadypull.thermal;

import java.util.List;

/**
 * Transmission fluid: one store, heated by the losses that go with power, cooled by something
 * between engine coolant and outside air.
 */
record TransmissionFluid() implements HeatBalance {
  /**
   * Kelvin per 100 kW passed on; weight of the engine coolant against outside air in what cools it,
   * 0 to 1; lag in seconds: 200 to 600 s (common practice, no source).
   */
  @Override
  public List<Parameter> parameters() {
    return List.of(
        Parameter.positive(22, 0.5), Parameter.free(0.6, 0.2), Parameter.positive(320, 0.4));
  }

  @Override
  public double kelvinPerSecond(double celsius, double[] p, Load load, double[] around) {
    double weight = Math.clamp(p[1], 0.0, 1.0);
    double cold =
        weight * around[Store.ENGINE_COOLANT.index()] + (1 - weight) * load.outsideCelsius();
    return (cold + p[0] * load.kilowatts() / 100 - celsius) / p[2];
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
    return 75;
  }
}
