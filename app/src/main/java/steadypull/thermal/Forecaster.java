package steadypull.thermal;

import steadypull.channel.Sample;
import steadypull.road.RoadAhead;

/**
 * Learns a vehicle's heat from its samples and says what comes. One thread; deterministic: the same
 * samples and ticks give the same forecasts.
 */
public interface Forecaster {

  /** Takes what is known of the road ahead of where the vehicle is now; holds for the next tick. */
  void accept(RoadAhead ahead);

  /** Takes a sample; times do not run backwards. */
  void accept(Sample sample);

  /**
   * Advances the models to a whole second of the trip and forecasts along the road ahead, or with
   * the present load held where no road is known.
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
