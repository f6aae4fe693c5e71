package steadypull.thermal;

import java.util.List;

/**
 * The physics of one store: how fast its temperature changes, given its parameters, the load and
 * the temperatures around it. Stateless; the state is kept by {@link ChannelEstimate}. A closed
 * set: one per store.
 *
 * <p>Every number in these models that is not marked with a source is common practice, no source,
 * or estimated; that is why each is learnt and starts with a wide spread.
 */
sealed interface HeatBalance
    permits CompressorOutlet,
        ExhaustGas,
        ChargeAir,
        ChargeCoolant,
        EngineCoolant,
        EngineOil,
        TransmissionFluid {

  /** Distance over which the slope of a rate is taken. */
  double PROBE_KELVIN = 0.25;

  /** What is believed before the vehicle has shown anything, in the order of the coordinates. */
  List<Parameter> parameters();

  /**
   * Rate of change in K/s.
   *
   * @param celsius temperature of this store
   * @param parameters physical values, in the order of {@link #parameters()}
   * @param load engine and road
   * @param around degC of every store, by {@link Store#index()}
   */
  double kelvinPerSecond(double celsius, double[] parameters, Load load, double[] around);

  /**
   * How far the model may be wrong about the rate, K/s, for a minute or two: wind, fans, traffic.
   */
  double disturbance();

  /**
   * The same for a store that was just met: heat may be on its way that no model knows of, such as
   * hot water in a hose.
   */
  default double firstDisturbance() {
    return disturbance();
  }

  /**
   * The wander of a store that was met less than a minute ago, when its readings may still say
   * little about its heat; K per square root of a second.
   */
  default double firstWander() {
    return wander();
  }

  /** Random wander of the temperature itself, K per square root of a second. */
  double wander();

  /**
   * The wander under a load: far more where a load says nothing of the parameters, so that they
   * stay as they were and the temperature alone is followed.
   */
  default double wander(Load load) {
    return wander();
  }

  /**
   * Standard deviation of one reading, K. Steps of 1 degC alone give 0.29 K, but neighbouring
   * readings share their rounding error and the sensor's lag, so that each counts for less
   * (estimated).
   */
  default double readingKelvin() {
    return 0.7;
  }

  /**
   * How late the sensor shows what the store does, in seconds, 0 or more: the way of the water to
   * it and its own lag. Left out, every rise would look as if the store held more heat than it
   * does.
   *
   * @param parameters physical values, in the order of {@link #parameters()}
   */
  default double sensorLagSeconds(double[] parameters) {
    return 0;
  }

  /** Where the store probably stands before its first sample, degC. */
  double probableStart(double outsideCelsius);

  /**
   * How strongly the store returns to where it settles: loss of rate per kelvin, 1/s, 0 or more. A
   * store whose rate is straight in its temperature knows it; others take the slope.
   *
   * @param rate of change at this temperature, K/s
   */
  default double returnPerSecond(
      double celsius, double rate, double[] parameters, Load load, double[] around) {
    double probe = kelvinPerSecond(celsius + PROBE_KELVIN, parameters, load, around);
    return Math.max(0, (rate - probe) / PROBE_KELVIN);
  }

  /**
   * One step of an exponential Rosenbrock-Euler scheme: exact for a first-order lag, stable at any
   * step length (Hochbruck and Ostermann, Exponential integrators, Acta Numerica 19, 2010, eq. 2.53
   * with one stage).
   *
   * @param added K/s besides the model's own rate
   * @param seconds step length
   * @return degC after the step
   */
  default double step(
      double celsius,
      double[] parameters,
      Load load,
      double[] around,
      double added,
      double seconds) {
    double rate = kelvinPerSecond(celsius, parameters, load, around);
    double relaxation = returnPerSecond(celsius, rate, parameters, load, around) * seconds;
    return celsius + (rate + added) * shareOfRate(relaxation) * seconds;
  }

  /**
   * What is left of a rate, 0 to 1, on the mean of a step, since the store returns meanwhile.
   *
   * @param relaxation loss of rate per kelvin times the length of the step, 0 or more
   */
  static double shareOfRate(double relaxation) {
    // Math.exp is many times faster than expm1; below the bound the series is exact to 1e-9.
    return relaxation < 1e-4 ? 1 - relaxation / 2 : (1 - Math.exp(-relaxation)) / relaxation;
  }
}
