package steadypull.thermal;

import java.util.List;
import steadypull.vehicle.CoolingLayout;

/**
 * Charge air after its cooler: T3 = T2 - eps (T2 - Tcold), with a short lag of core and sensor. The
 * cold side is the charge coolant, or the outside air warmed by what stands before the core.
 *
 * <p>eps = 1 - exp(-NTU), the relation of any heat exchanger whose cold stream hardly warms (Kays
 * and London, Compact Heat Exchangers; Incropera and DeWitt ch. 11, Cr = 0).
 */
record ChargeAir(CoolingLayout layout) implements HeatBalance {
  /** Air-to-air: a core at rest keeps this share of its transfer units (estimated). */
  private static final double STANDING_SHARE = 0.35;

  /**
   * Transfer units at 0.2 kg/s; kelvin that the cold side is warmer than its sensor says; lag in
   * seconds; power of the air flow with which transfer units fall. Effectiveness at 0.2 kg/s:
   * common practice 0.7 to 0.9 either way. Lag: air sensor 2 to 15 s, core 10 to 40 s (common
   * practice). Power: 1 where what cools the core decides, for then the conductance stays as it is,
   * and 0.2 to 0.4 where the air inside does, whose coefficient grows with its flow to 0.6 to 0.8
   * (turbulent flow in ducts: Incropera and DeWitt ch. 8). One power for all coolers took some of
   * the heat of a full pull for a passing disturbance.
   */
  @Override
  public List<Parameter> parameters() {
    return switch (layout) {
      case AIR_TO_AIR ->
          List.of(
              Parameter.positive(1.8, 0.3),
              Parameter.free(4, 4),
              Parameter.positive(12, 0.5),
              Parameter.free(0.6, 0.2));
      case WATER_TO_AIR ->
          List.of(
              Parameter.positive(1.9, 0.3),
              Parameter.free(1, 2),
              Parameter.positive(8, 0.5),
              Parameter.free(0.6, 0.2));
    };
  }

  @Override
  public double kelvinPerSecond(double celsius, double[] p, Load load, double[] around) {
    double inlet = around[Store.CHARGE_INLET.index()];
    double cold = coldCelsius(load, around) + p[1];
    double settles = inlet - effectiveness(p[0], p[3], load) * (inlet - cold);
    return (settles - celsius) / p[2];
  }

  /**
   * Effectiveness, 0 to 1, of a core.
   *
   * @param transferUnits at 0.2 kg/s and 25 m/s
   * @param power of the air flow with which they fall
   */
  double effectiveness(double transferUnits, double power, Load load) {
    double here = transferUnits * Math.exp(-power * load.airFlowLogarithm()) * wind(load);
    return 1 - Math.exp(-here);
  }

  private double wind(Load load) {
    return switch (layout) {
      case AIR_TO_AIR ->
          load.densityShare() * (STANDING_SHARE + (1 - STANDING_SHARE) * load.ramAir());
      case WATER_TO_AIR -> 1;
    };
  }

  private double coldCelsius(Load load, double[] around) {
    return switch (layout) {
      case AIR_TO_AIR -> load.outsideCelsius();
      case WATER_TO_AIR -> around[Store.CHARGE_COOLANT.index()];
    };
  }

  @Override
  public double returnPerSecond(
      double celsius, double rate, double[] p, Load load, double[] around) {
    return 1 / p[2];
  }

  @Override
  public double disturbance() {
    return 0.2;
  }

  @Override
  public double wander() {
    return 0.2;
  }

  @Override
  public double probableStart(double outsideCelsius) {
    return outsideCelsius + 15;
  }
}
