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
   * Transfer units, then kelvin that the cold side is warmer than its sensor says, then lag in
   * seconds. Effectiveness at 0.2 kg/s: common practice 0.7 to 0.9 either way. Lag: air sensor 2 to
   * 15 s, core 10 to 40 s (common practice).
   */
  @Override
  public List<Parameter> parameters() {
    return switch (layout) {
      case AIR_TO_AIR ->
          List.of(Parameter.positive(1.8, 0.3), Parameter.free(4, 4), Parameter.positive(12, 0.5));
      case WATER_TO_AIR ->
          List.of(Parameter.positive(1.9, 0.3), Parameter.free(1, 2), Parameter.positive(8, 0.5));
    };
  }

  @Override
  public double kelvinPerSecond(double celsius, double[] p, Load load, double[] around) {
    double inlet = around[Store.CHARGE_INLET.index()];
    double cold = coldCelsius(load, around) + p[1];
    double settles = inlet - effectiveness(p[0], load) * (inlet - cold);
    return (settles - celsius) / p[2];
  }

  /** Effectiveness, 0 to 1, of a core with the given transfer units at 0.2 kg/s and 25 m/s. */
  double effectiveness(double transferUnits, Load load) {
    return 1 - Math.exp(-transferUnits * load.transferUnitsShare() * wind(load));
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
