package steadypull.demo.plant;

/** Exhaust temperatures before and after the turbine, degC. */
final class Exhaust {
  private static final double HEAT_CAPACITY = 1120; // J/(kg K), diesel exhaust, common practice
  private static final double LEAST_FLOW = 0.01; // kg/s

  private final Lag before;
  private final Lag after;

  Exhaust(double startCelsius) {
    before = new Lag(2.5, startCelsius);
    after = new Lag(4, startCelsius);
  }

  /**
   * Moves on by a span.
   *
   * @param heat into the exhaust port, W
   * @param flow air and fuel, kg/s
   * @param compressorPower what the turbine takes out, W
   */
  void step(double span, double heat, double flow, double manifoldCelsius, double compressorPower) {
    double heatFlow = Math.max(LEAST_FLOW, flow) * HEAT_CAPACITY;
    double hot = before.follow(manifoldCelsius + heat / heatFlow, span);
    after.follow(hot - compressorPower / heatFlow, span);
  }

  double beforeCelsius() {
    return before.value();
  }

  double afterCelsius() {
    return after.value();
  }
}
