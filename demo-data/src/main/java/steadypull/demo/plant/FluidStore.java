package steadypull.demo.plant;

/** A sump of oil or gearbox fluid: one heat store, warmed by losses, cooled by two neighbours. */
final class FluidStore {
  private final double capacity;
  private double celsius;
  private double heatToCoolant;

  FluidStore(double capacity, double startCelsius) {
    this.capacity = capacity;
    celsius = startCelsius;
  }

  /**
   * Moves on by a span.
   *
   * @param heatIn losses, W
   * @param coolantConductance to the engine coolant, W/K
   * @param airConductance to the air, W/K
   */
  void step(
      double span,
      double heatIn,
      double coolantConductance,
      double coolantCelsius,
      double airConductance,
      double airCelsius) {
    heatToCoolant = coolantConductance * (celsius - coolantCelsius);
    double heatToAir = airConductance * (celsius - airCelsius);
    celsius += span * (heatIn - heatToCoolant - heatToAir) / capacity;
  }

  double celsius() {
    return celsius;
  }

  /** Negative while the coolant warms the fluid, W. */
  double heatToCoolant() {
    return heatToCoolant;
  }
}
