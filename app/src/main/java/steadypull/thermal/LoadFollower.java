package steadypull.thermal;

import java.util.List;

/**
 * A gas temperature that follows the load with a short lag: compressor outlet, exhaust. It settles
 * at outside + base + a * power + b * engine speed. The compressor's outlet rises with its pressure
 * ratio (T2 = T1 (1 + (r^0.286 - 1) / eta)), and pressure ratio with power; over the range that a
 * tow uses a straight line is near enough (estimated: within 8 K).
 */
record LoadFollower(
    double baseKelvin,
    double kelvinPer100Kilowatts,
    double kelvinPer1000Rpm,
    double relativeSpread,
    double lagSeconds,
    double disturbance,
    double wander)
    implements HeatBalance {

  /** 160 degC at 150 kW and 2000 r/min on a hot day; common practice 140 to 180. */
  static LoadFollower compressorOutlet() {
    return new LoadFollower(10, 62, 8, 0.3, 12, 0.25, 0.4);
  }

  /** 600 degC before the turbine at 200 kW; common practice 450 to 650. */
  static LoadFollower exhaust() {
    return new LoadFollower(130, 210, 10, 0.3, 8, 2.0, 3);
  }

  @Override
  public List<Parameter> parameters() {
    return List.of(
        Parameter.free(baseKelvin, baseKelvin),
        Parameter.free(kelvinPer100Kilowatts, kelvinPer100Kilowatts * relativeSpread),
        Parameter.free(kelvinPer1000Rpm, kelvinPer1000Rpm),
        Parameter.positive(lagSeconds, 0.4));
  }

  @Override
  public double kelvinPerSecond(double celsius, double[] p, Load load, double[] around) {
    double settles =
        load.outsideCelsius()
            + p[0]
            + p[1] * load.kilowatts() / 100
            + p[2] * load.engineRpm() / 1000;
    return (settles - celsius) / p[3];
  }

  @Override
  public double probableStart(double outsideCelsius) {
    return outsideCelsius + baseKelvin;
  }
}
