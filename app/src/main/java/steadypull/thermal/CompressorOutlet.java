package steadypull.thermal;

import java.util.List;

/**
 * Charge air before its cooler. It follows the load with a short lag of housing, pipe and sensor
 * and settles at outside + base + a * power + b * engine speed, the latter two times what hotter
 * charge adds: the hotter it leaves the cooler, the harder the compressor works.
 *
 * <p>A compressor heats by T1 (r^0.286 - 1) / eta, and its pressure ratio r rises with power; over
 * the range that a tow uses a straight line is near enough (estimated: within 8 K). Compressed air
 * is never colder than it came in.
 */
record CompressorOutlet() implements HeatBalance {
  /**
   * Hotter charge needs more boost for the same air: r grows with its absolute temperature, and r
   * (0.286 r^0.286) / (r^0.286 - 1) / r is 1.24 at r = 2.5, so 1.24 / 330 K.
   */
  private static final double HOTTER_CHARGE_PER_KELVIN = 0.0037;

  private static final double USUAL_CHARGE_CELSIUS = 57;

  /**
   * Base in kelvin, kelvin per 100 kW, kelvin per 1000 r/min, lag in seconds. 160 degC at 150 kW on
   * a hot day; common practice 140 to 180.
   */
  @Override
  public List<Parameter> parameters() {
    return List.of(
        Parameter.free(10, 10),
        Parameter.free(62, 18),
        Parameter.free(8, 8),
        Parameter.positive(12, 0.4));
  }

  @Override
  public double kelvinPerSecond(double celsius, double[] p, Load load, double[] around) {
    double work = p[1] * load.kilowatts() / 100 + p[2] * load.engineRpm() / 1000;
    double hotter = around[Store.CHARGE_AIR.index()] - USUAL_CHARGE_CELSIUS;
    double above = p[0] + work * (1 + HOTTER_CHARGE_PER_KELVIN * hotter);
    return (load.outsideCelsius() + Math.max(0, above) - celsius) / p[3];
  }

  @Override
  public double returnPerSecond(
      double celsius, double rate, double[] p, Load load, double[] around) {
    return 1 / p[3];
  }

  @Override
  public double disturbance() {
    return 0.25;
  }

  @Override
  public double wander() {
    return 0.4;
  }

  @Override
  public double probableStart(double outsideCelsius) {
    return outsideCelsius + 10;
  }
}
