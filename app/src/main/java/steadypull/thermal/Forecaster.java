package steadypull.thermal;

import steadypull.channel.Sample;

/**
 * Learns a vehicle's heat from its samples and says what comes. One thread; deterministic: the same
 * samples and ticks give the same forecasts.
 */
public interface Forecaster {

  /** Takes a sample; times do not run backwards. */
  void accept(Sample sample);

  /**
   * Advances the models to a whole second of the trip and forecasts with the present load held.
   *
   * @param timeMicros microseconds since trip start, later than the last tick
   */
  Forecast tick(long timeMicros);

  /**
   * Forecasts from the state of the last tick under another assumption. Cheap enough to be asked a
   * few times a second.
   *
   * @throws IllegalStateException before the first tick
   */
  Forecast under(Forecast.Assumption assumption);
}
