package steadypull.demo.plant;

/** Takes heat out of the charge air. Temperatures in degC, heats in W. */
sealed interface ChargeCooler permits WaterChargeCooler, AirChargeCooler {
  double HEAT_CAPACITY_AIR = 1012; // J/(kg K), Lemmon et al. 2000, about 100 degC

  /** Cools the air that comes at a flow in kg/s. */
  void step(double span, double airFlow, double inCelsius, CoolingAir coolingAir);

  double outCelsius();

  /** Out of the charge air. */
  double heatFromAir();

  /** Into the cooling air in front of the engine radiator. */
  double heatRejected();

  /** Of the water that enters the cooler, or of the outside air where there is no water. */
  double coolantCelsius();

  /** Heat held above 0 degC, J. */
  double heatStored();

  /**
   * Effectiveness of a counter-flow exchanger (Kays and London, Compact Heat Exchangers, from
   * memory), air as the lesser stream.
   *
   * @param transferUnits UA over the lesser heat flow
   * @param ratio lesser over greater heat flow, 0 to below 1
   */
  static double effectiveness(double transferUnits, double ratio) {
    double decay = Math.exp(-transferUnits * (1 - ratio));
    return (1 - decay) / (1 - ratio * decay);
  }
}
