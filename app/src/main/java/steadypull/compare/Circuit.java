package steadypull.compare;

import java.util.List;

/**
 * The physics of one heat store between a load and the outside air: heat capacity C in J/K takes
 * up, conductance UA in W/K gives off, a sensor shows late. Stateless. A closed set.
 */
sealed interface Circuit permits PlainCircuit, ThermostatCircuit {
  /** Place of the sensor's lag in seconds among {@link #own()}. */
  int LAG = 0;

  double PROBE_KELVIN = 0.25;

  /** Colder than this nothing settles, nor hotter than the other; degC. */
  double COLDEST = -60;

  double HOTTEST = 900;

  int HALVINGS = 50;

  /** Unknowns beside C and UA that both sides share; the sensor's lag is the first. */
  List<Prior> own();

  /** What is believed of the heat capacity, J/K. */
  Prior joulesPerKelvin();

  /** What is believed of the conductance at 25 m/s in air of 20 degC at sea level, W/K. */
  Prior wattsPerKelvin();

  /** How far its sensor tells another day another degree, K. */
  double sensorKelvinPerDay();

  /** Standard deviation of a factor on heat and conductance that differs from run to run. */
  double sharePerRun();

  /**
   * Heat given off, W.
   *
   * @param own values of {@link #own()}
   */
  double givenWatts(
      double celsius, double watts, double[] own, LoadCourse load, int second, Effects effects);

  /** Heat that the whole store takes for each kelvin that its sensor's place warms, J/K. */
  default double storedJoules(double joules, double watts, double[] own) {
    return joules;
  }

  /** How late its sensor shows what the load does, s. */
  default double lagSeconds(double joules, double[] own) {
    return own[LAG];
  }

  /** What the store gains, W. */
  default double gainedWatts(
      double celsius, double watts, double[] own, LoadCourse load, int second, Effects effects) {
    return effects.heat() * load.heatWatts(second, celsius)
        - givenWatts(celsius, watts, own, load, second, effects);
  }

  /**
   * What its sensor shows over a load, degC, one value a second, the first at the first second.
   * Each step is exponential Euler, exact for a first-order lag and stable at any length (Hochbruck
   * and Ostermann, Exponential integrators, Acta Numerica 19, 2010, eq. 2.53 with one stage).
   */
  default double[] shown(
      double joules, double watts, double[] own, LoadCourse load, Effects effects) {
    double[] shown = new double[load.endSecond() - load.firstSecond()];
    double celsius = effects.startCelsius();
    double sensor = celsius;
    double keeps = Math.exp(-1 / Math.max(0.1, lagSeconds(joules, own)));
    double stored = storedJoules(joules, watts, own);
    for (int i = 0; i < shown.length; i++) {
      shown[i] = sensor + effects.sensorKelvin();
      int second = load.firstSecond() + i;
      double gained = gainedWatts(celsius, watts, own, load, second, effects);
      double hotter = gainedWatts(celsius + PROBE_KELVIN, watts, own, load, second, effects);
      double relaxation = Math.max(0, (gained - hotter) / PROBE_KELVIN / stored);
      double share = relaxation < 1e-6 ? 1 : -Math.expm1(-relaxation) / relaxation;
      celsius += gained / stored * share;
      sensor = celsius + (sensor - celsius) * keeps;
    }
    return shown;
  }

  /** Where the store settles if the load of a second goes on for ever, degC. */
  default double settled(double watts, double[] own, LoadCourse load, int second, Effects effects) {
    double low = COLDEST;
    double high = HOTTEST;
    for (int i = 0; i < HALVINGS; i++) {
      double middle = (low + high) / 2;
      if (gainedWatts(middle, watts, own, load, second, effects) > 0) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return (low + high) / 2;
  }
}
