package steadypull.compare;

import java.util.List;

/**
 * Engine coolant behind its thermostat, with a fan that comes in late. Immutable. What is believed
 * of it is common practice, no source, or estimated, and therefore wide.
 */
record ThermostatCircuit() implements Circuit {
  private static final int WARMER = 1;
  private static final int OPENS = 2;
  private static final int SPAN = 3;
  private static final int FAN = 4;
  private static final int FAN_BEGINS = 5;
  private static final int SPEED_EXPONENT = 6;

  /** What block and hoses lose with the thermostat shut, W/K (estimated). */
  private static final double SHUT_CONDUCTANCE = 60;

  /** A radiator without ram air, with its fan idling, keeps this share (estimated). */
  private static final double STANDING_SHARE = 0.35;

  /** Viscous clutches take several kelvin to come in (estimated). */
  private static final double FAN_SPAN_KELVIN = 7;

  private static final int CURVE = 7;

  private static final double DENSITY_EXPONENT = 0.7;

  @Override
  public List<Prior> own() {
    return List.of(
        Prior.positive(4, 0.5),
        Prior.free(5, 5),
        Prior.free(86, 3),
        Prior.positive(8, 0.3),
        Prior.positive(0.25, 0.7),
        Prior.free(98, 3),
        Prior.free(0.6, 0.07),
        Prior.positive(1.6, 0.3));
  }

  @Override
  public Prior joulesPerKelvin() {
    return Prior.positive(140_000, 0.6);
  }

  @Override
  public Prior wattsPerKelvin() {
    return Prior.positive(1_450, 0.6);
  }

  /** A whole degree that is cut elsewhere, and its contact (estimated). */
  @Override
  public double sensorKelvinPerDay() {
    return 0.5;
  }

  /** Oil and gearbox give heat of earlier, the fan's clutch slips as it likes (estimated). */
  @Override
  public double sharePerRun() {
    return 0.04;
  }

  /** Above this the thermostat regulates no longer, degC. */
  static double fullyOpenCelsius(double[] own) {
    return own[OPENS] + own[SPAN];
  }

  @Override
  public double givenWatts(
      double celsius, double watts, double[] own, LoadCourse load, int second, Effects effects) {
    double open = 1 - Math.pow(1 - share((celsius - own[OPENS]) / own[SPAN]), own[CURVE]);
    double fan = share((celsius - own[FAN_BEGINS]) / FAN_SPAN_KELVIN);
    double wind = PlainCircuit.wind(own[SPEED_EXPONENT], STANDING_SHARE, load, second);
    double density = Math.exp(DENSITY_EXPONENT * load.logDensity(second));
    double blown = (wind + own[FAN] * fan) * density * effects.conductance();
    double outside = load.outsideCelsius(second) + effects.outsideKelvin();
    return SHUT_CONDUCTANCE * (celsius - outside)
        + open * watts * blown * (celsius - outside - own[WARMER]);
  }

  private static double share(double way) {
    return Math.clamp(way, 0.0, 1.0);
  }
}
