package steadypull.thermal;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.road.LatestSamples;
import steadypull.vehicle.Limit;
import steadypull.vehicle.Vehicle;

/**
 * Which channel of a vehicle is hot enough to cost it power. A channel that was hotter while the
 * engine gave all that it was asked for is not the one. Pipeline thread only.
 */
final class HotChannels {
  /** Sensors lag and round; a channel this near its limit counts as hot (estimated). */
  private static final double NEAR_LIMIT_KELVIN = 3;

  /** Engine controls begin and end at somewhat different temperatures, behind lags (estimated). */
  private static final double INNOCENT_KELVIN = 3;

  private static final double FRESH_SECONDS = 15;

  private final Vehicle vehicle;
  private final LatestSamples samples;
  private final double nearKelvin;
  private final Map<Channel, Double> fullPowerCelsius = new HashMap<>();

  /**
   * Channels of a drive.
   *
   * @param earlierKelvin so far below its limit a channel may be hot as well, 0 or more
   */
  HotChannels(Vehicle vehicle, LatestSamples samples, double earlierKelvin) {
    this.vehicle = vehicle;
    this.samples = samples;
    this.nearKelvin = NEAR_LIMIT_KELVIN + earlierKelvin;
  }

  /** Full power was asked for and given. */
  void fullPowerGiven(long timeMicros) {
    for (Limit limit : vehicle.limits().values()) {
      OptionalDouble celsius = celsius(limit, timeMicros);
      if (celsius.isPresent()) {
        fullPowerCelsius.merge(limit.channel(), celsius.getAsDouble(), Math::max);
      }
    }
  }

  /**
   * The channel nearest to, or farthest over, its limit, if one is near enough; of several, one
   * that was never as hot as this at full power.
   */
  Optional<Channel> hottest(long timeMicros) {
    return hottest(timeMicros, 0).or(() -> hottest(timeMicros, INNOCENT_KELVIN));
  }

  private Optional<Channel> hottest(long timeMicros, double allowedKelvin) {
    Optional<Channel> hottest = Optional.empty();
    double least = Double.POSITIVE_INFINITY;
    for (Limit limit : vehicle.limits().values()) {
      double celsius = celsius(limit, timeMicros).orElse(Double.NEGATIVE_INFINITY);
      double innocent =
          fullPowerCelsius.getOrDefault(limit.channel(), Double.NEGATIVE_INFINITY) - allowedKelvin;
      double headroom = counting(limit, timeMicros) - celsius;
      double weighed = headroom / weight(limit.channel());
      if (headroom <= nearKelvin && weighed < least && celsius >= innocent) {
        least = weighed;
        hottest = Optional.of(limit.channel());
      }
    }
    return hottest;
  }

  /**
   * Kelvin over the limit that say as much as one of coolant or charge air. Exhaust gas moves by
   * tens; the limits of oils are there to save them, engine controls seldom look at them
   * (estimated; common practice, no source).
   */
  private static double weight(Channel channel) {
    if (channel.equals(Channels.EXHAUST_TEMP_BEFORE_TURBINE)) {
      return 10;
    }
    boolean isOil =
        channel.equals(Channels.ENGINE_OIL_TEMP)
            || channel.equals(Channels.TRANSMISSION_FLUID_TEMP);
    return isOil ? 3 : 1;
  }

  private double counting(Limit entered, long timeMicros) {
    return vehicle
        .limit(entered.channel(), OutsidePressure.kilopascals(samples, timeMicros))
        .orElse(entered)
        .celsius();
  }

  private OptionalDouble celsius(Limit limit, long timeMicros) {
    return samples.within(limit.channel(), timeMicros, FRESH_SECONDS);
  }
}
