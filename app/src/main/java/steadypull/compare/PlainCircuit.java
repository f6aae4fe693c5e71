package steadypull.compare;

import java.util.List;

/**
 * A store that gives its heat straight to the outside air: the water of a charge cooler, the core
 * of one in the air, an oil. Immutable.
 *
 * @param joulesPerKelvin what is believed of its heat capacity
 * @param wattsPerKelvin what is believed of its conductance
 * @param lagSeconds what is believed of its sensor's lag
 * @param warmEndKelvinPerWatt what is believed of the share of a circuit that is its warm end, over
 *     the heat flow of its pump in W/K
 */
record PlainCircuit(
    Prior joulesPerKelvin, Prior wattsPerKelvin, Prior lagSeconds, Prior warmEndKelvinPerWatt)
    implements Circuit {
  private static final int WARMER = 1;
  private static final int SPEED_EXPONENT = 2;
  private static final int STANDING = 3;
  private static final int DENSITY_EXPONENT = 4;
  private static final int WARM_END = 5;

  @Override
  public List<Prior> own() {
    return List.of(
        lagSeconds,
        Prior.free(4, 4),
        Prior.free(0.6, 0.07),
        Prior.positive(0.25, 0.5),
        Prior.free(0.7, 0.1),
        warmEndKelvinPerWatt);
  }

  /** Told apart from no error of the outside air, which is wider. */
  @Override
  public double sensorKelvinPerDay() {
    return 0.05;
  }

  @Override
  public double sharePerRun() {
    return 0.005;
  }

  /**
   * A circuit's warm end stands above the cold one by heat over the pump's heat flow, so that it
   * stores more the more heat goes round.
   */
  @Override
  public double storedJoules(double joules, double watts, double[] own) {
    return joules * (1 + own[WARM_END] * watts);
  }

  /** Warm water has to come round first, the later the more there is of it. */
  @Override
  public double lagSeconds(double joules, double[] own) {
    return own[LAG] + own[WARM_END] * joules;
  }

  @Override
  public double givenWatts(
      double celsius, double watts, double[] own, LoadCourse load, int second, Effects effects) {
    double wind = wind(own[SPEED_EXPONENT], own[STANDING], load, second);
    double density = Math.exp(own[DENSITY_EXPONENT] * load.logDensity(second));
    double sink = load.outsideCelsius(second) + effects.outsideKelvin() + own[WARMER];
    return watts * wind * density * effects.conductance() * (celsius - sink);
  }

  /** Conductance against that at 25 m/s; on rollers the fan blows as it does. */
  static double wind(double exponent, double standing, LoadCourse load, int second) {
    if (load.isOnRollers()) {
      return 1;
    }
    double least = Math.min(1, standing);
    double ram = Math.exp(exponent * load.logSpeed(second));
    return least + (1 - least) * ram;
  }
}
