package steadypull.advice;

import java.util.Map;
import java.util.Objects;
import java.util.function.Function;
import steadypull.channel.Channel;
import steadypull.channel.Sample;
import steadypull.thermal.Derate;
import steadypull.thermal.Forecast;
import steadypull.vehicle.TroubleCodes;

/**
 * Everything that the rules may look at, once a second of the trip. Immutable but for the model
 * behind {@code under}, which belongs to the same thread.
 *
 * @param timeMicros microseconds since trip start
 * @param forecast present load held
 * @param under the same models under another assumption, for "at 75 km/h"
 * @param latest the last sample of every channel heard so far
 * @param derate whether torque is being cut
 * @param secondsSilent seconds since any channel was heard; 0 while readings come
 * @param roadAheadKnown whether the forecast knows the grades to come; otherwise it holds the load
 * @param codes the trouble codes that the vehicle told last
 * @param surroundings what is known beside the readings of the moment
 */
public record Situation(
    long timeMicros,
    Forecast forecast,
    Function<Forecast.Assumption, Forecast> under,
    Map<Channel, Sample> latest,
    Derate derate,
    double secondsSilent,
    boolean roadAheadKnown,
    TroubleCodes codes,
    Surroundings surroundings) {
  public Situation {
    Objects.requireNonNull(surroundings);
    Objects.requireNonNull(codes);
    Objects.requireNonNull(forecast);
    Objects.requireNonNull(under);
    Objects.requireNonNull(derate);
    latest = Map.copyOf(latest);
  }

  /** A situation of which nothing is known but the readings of the moment. */
  public Situation(
      long timeMicros,
      Forecast forecast,
      Function<Forecast.Assumption, Forecast> under,
      Map<Channel, Sample> latest,
      Derate derate,
      double secondsSilent,
      boolean roadAheadKnown,
      TroubleCodes codes) {
    this(
        timeMicros,
        forecast,
        under,
        latest,
        derate,
        secondsSilent,
        roadAheadKnown,
        codes,
        Surroundings.UNKNOWN);
  }

  /** A situation on a road that nobody knows: the forecast holds the present load. */
  public Situation(
      long timeMicros,
      Forecast forecast,
      Function<Forecast.Assumption, Forecast> under,
      Map<Channel, Sample> latest,
      Derate derate,
      double secondsSilent,
      TroubleCodes codes) {
    this(timeMicros, forecast, under, latest, derate, secondsSilent, false, codes);
  }
}
