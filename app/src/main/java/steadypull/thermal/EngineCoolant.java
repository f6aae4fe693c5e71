package steadypull.thermal;

import java.util.List;

/**
 * Engine coolant: one store, heated by a share of the fuel's power, behind a thermostat, with a fan
 * whose engagement shows as a step in conductance.
 */
record EngineCoolant() implements HeatBalance {
  /** Place of the heat capacity among the parameters. */
  static final int JOULES_PER_KELVIN = 0;

  /** Place of the conductance at 25 m/s. */
  static final int WATTS_PER_KELVIN = 3;

  /** What block and hoses lose with the thermostat shut, W/K (estimated). */
  private static final double SHUT_CONDUCTANCE = 60;

  /** A radiator without ram air, with its fan idling, keeps this share (estimated). */
  private static final double STANDING_SHARE = 0.35;

  /** The fan comes in over this span (estimated: viscous clutches take several kelvin). */
  private static final double FAN_SPAN_KELVIN = 6;

  private static final double SENSOR_SECONDS = 3;

  private static final double WATTS_PER_KILOWATT = 1000;

  /**
   * Heat capacity in J/K (15 to 25 L of coolant and the wetted part of the block); share of fuel
   * power to coolant (Heywood, Internal Combustion Engine Fundamentals, table 12.1: 0.16 to 0.35;
   * modern diesels 0.18 to 0.25, common practice); temperature at which the thermostat begins to
   * open, degC; conductance wide open at 25 m/s, W/K; share that the fan adds; temperature at which
   * it begins, degC; kelvin from beginning to full opening of the thermostat (a wax one 8 to 12, of
   * which the first half does most of the work; common practice, no source): how stiffly it holds
   * would else be taken for little heat capacity. The conductance, what stands before the radiator
   * included, is believed within a factor 1.46: a vehicle rated for towing holds a long grade at 38
   * degC (SAE J2807), so a much weaker one is rare.
   */
  @Override
  public List<Parameter> parameters() {
    return List.of(
        Parameter.positive(140_000, 0.4),
        Parameter.positive(0.2, 0.2),
        Parameter.free(85, 4),
        Parameter.positive(1_450, 0.38),
        Parameter.positive(0.3, 0.9),
        Parameter.free(99, 4),
        Parameter.positive(8, 0.4));
  }

  @Override
  public double kelvinPerSecond(double celsius, double[] p, Load load, double[] around) {
    double heat = p[1] * load.fuelKilowatts() * WATTS_PER_KILOWATT;
    double open = ramp(celsius, p[2], p[6]);
    double fan = ramp(celsius, p[5], FAN_SPAN_KELVIN);
    double wind = STANDING_SHARE + (1 - STANDING_SHARE) * load.ramAir();
    CoreChange cores = load.cores();
    double blown = wind + p[4] * fan * cores.fanShare();
    double radiator = open * p[3] * load.densityShare() * blown * cores.coolantShare();
    double given = (SHUT_CONDUCTANCE + radiator) * (celsius - load.outsideCelsius());
    return (heat - given - radiator * cores.coolerKelvin()) / p[0];
  }

  private static double ramp(double celsius, double from, double span) {
    return Math.clamp((celsius - from) / span, 0.0, 1.0);
  }

  @Override
  public double disturbance() {
    return 0.05;
  }

  @Override
  public double wander() {
    return 0.3;
  }

  /** A probe in the outlet of the block (common practice 3 to 10 s, no source). */
  @Override
  public double sensorLagSeconds(double[] p) {
    return SENSOR_SECONDS;
  }

  @Override
  public double probableStart(double outsideCelsius) {
    return 85;
  }
}
