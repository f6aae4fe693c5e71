package steadypull.thermal;

import java.util.Map;
import java.util.OptionalDouble;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.road.LatestSamples;
import steadypull.road.StandardAtmosphere;

/**
 * The pressure of the air outside: as the vehicle tells it, else of a standard day at the
 * receiver's height, else at sea level. Pipeline thread only.
 */
public final class OutsidePressure {
  /** Both change slowly; a drive of a quarter of an hour may climb 1200 m, 13 kPa. */
  private static final double FRESH_SECONDS = 900;

  private OutsidePressure() {}

  /** kPa, absolute. */
  static double kilopascals(LatestSamples samples, long timeMicros) {
    OptionalDouble told = samples.within(Channels.BAROMETRIC_PRESSURE, timeMicros, FRESH_SECONDS);
    OptionalDouble metres = samples.within(Channels.ALTITUDE, timeMicros, FRESH_SECONDS);
    return told.orElse(
        metres.isPresent()
            ? StandardAtmosphere.kilopascals(
                StandardAtmosphere.geopotentialMetres(metres.getAsDouble()))
            : StandardAtmosphere.SEA_LEVEL_KILOPASCALS);
  }

  /** kPa, absolute, from the last samples of a drive. */
  public static double kilopascals(Map<Channel, Sample> latest, long timeMicros) {
    LatestSamples samples = new LatestSamples();
    for (Channel channel : new Channel[] {Channels.BAROMETRIC_PRESSURE, Channels.ALTITUDE}) {
      Sample sample = latest.get(channel);
      if (sample != null) {
        samples.accept(sample);
      }
    }
    return kilopascals(samples, timeMicros);
  }
}
